#include "sim/clearance/wander.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stowpath {
namespace {

/// Off the nominal place while the contact is that far off the crown.
Vec2 off_nominal(const Wander& wander, double touch) {
  return wander.slack * Vec2{std::sin(touch), 1.0 - std::cos(touch)};
}

}  // namespace

Wander assumed_wander(const Model& model) {
  return {model.hook_slack, {-model.seat_range, model.seat_range}, 0.0, 0.0, 0.0};
}

Wander wander_in(const Model& model, const Move& move) {
  const Wander assumed = assumed_wander(model);
  if (!move.seat) return assumed;
  const MoveSeat& seat = *move.seat;
  return {model.hook_slack, hull(assumed.touch, seat.touch), seat.rise, seat.growth, seat.hook_growth};
}

double wander_reach(const Wander& wander) {
  const double most = std::max(std::abs(wander.touch.lo), std::abs(wander.touch.hi));
  return 2.0 * wander.slack * std::sin(0.5 * std::min(most, std::numbers::pi));
}

double wander_towards(const Wander& wander, Vec2 n) {
  const double best = std::atan2(n.x, -n.y);  // of the whole circle
  double most = 0.0;
  for (const double touch : {wander.touch.lo, wander.touch.hi})
    most = std::max(most, dot(off_nominal(wander, touch), n));
  return wander.touch.contains(best) ? std::max(most, wander.slack * (norm(n) + n.y)) : most;
}

}  // namespace stowpath
