#include "sim/rehearsal/span_hand.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

namespace stowpath {
namespace {

constexpr double kPressed = 0.9;    // the whole force has had time to jam the hooks after all [s]
constexpr double kTrialTime = 1.5;  // of one push, when it is asked whether the stair moves [s]
constexpr double kLastPart = 0.25;  // of it, in which the stair must not slow down [s]
constexpr double kTrialStep = 1 / 480.0;
constexpr double kRunsAway = 1.0;   // faster certainly moves [m/s]
constexpr int kHalvings = 12;       // of the push needed, from kMostPush to kPushFound
constexpr double kFreeRail = 90.0;  // each way from where a stair starts that is to meet nothing [m]

SpanPush with_force(const SpanPush& push, double force) { return {push.at, force / norm(push.force) * push.force}; }

}  // namespace

void check_hand(const PushOptions& hand, const Model& model) {
  const bool numbers = std::isfinite(hand.force) && std::isfinite(hand.across) && std::isfinite(hand.turned);
  if (!numbers || hand.force == 0.0) throw std::invalid_argument("push: its force must be a number and not 0");
  if (std::abs(hand.turned) >= 0.5 * std::numbers::pi - 0.01)
    throw std::invalid_argument("push: it must have a part along the rail");
  if (!(hand.height >= model.floor_level && hand.height <= model.linkage.pivot.y))
    throw std::invalid_argument("push: the hand must be between the floor and the rail");
  if (!(hand.pace > 0.0 && hand.pace <= 3.0))
    throw std::invalid_argument("push: the pace must be over 0 and at most 3 m/s");
}

SpanPush in_plan(const PushOptions& hand, const Model& model) {
  const double out = (model.linkage.pivot.y - hand.height) * std::tan(model.working_lean);
  const double along = std::copysign(std::cos(hand.turned), hand.force);
  return {{hand.across, out}, std::abs(hand.force) * Vec2{along, std::sin(hand.turned)}};
}

double free_height(const Model& model, const SpanStair& stair, const SpanFriction& most_friction) {
  const double up = model.linkage.pivot.y - racking_offset(stair, most_friction) / std::tan(model.working_lean);
  return std::max(model.floor_level, up);
}

std::array<SpanFriction, 3> span_frictions(const Frictions& range) {
  return {SpanFriction{range.hook.lo, range.floor.hi, kCasterArm.lo, kRollerArm.lo},
          SpanFriction{range.hook.middle(), range.floor.middle(), kCasterArm.middle(), kRollerArm.middle()},
          SpanFriction{range.hook.hi, range.floor.lo, kCasterArm.hi, kRollerArm.hi}};
}

bool moves_under(const SpanStair& stair, const SpanFriction& friction, const SpanPush& push, double force) {
  SpanWorld world(stair, free_rail(), friction, 0.0, kTrialStep);
  const SpanPush asked = with_force(push, force);
  const double forward = std::copysign(1.0, push.force.x);
  double before = 0.0;
  while (world.time() < kTrialTime) {
    if (world.time() < kTrialTime - kLastPart) before = forward * world.state().speed;
    world.advance(pressed(asked, world.time()));
    if (world.time() > kPressed && forward * world.state().speed > kRunsAway) return true;
  }
  const double speed = forward * world.state().speed;
  return speed > kRollCreep && speed >= before;
}

std::optional<double> push_needed(const SpanStair& stair, const SpanFriction& friction, const SpanPush& push) {
  if (!moves_under(stair, friction, push, kMostPush)) return std::nullopt;
  double low = 0.0, high = kMostPush;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (moves_under(stair, friction, push, middle) ? high : low) = middle;
  }
  return high;
}

SpanSite free_rail() { return {{-kFreeRail, kFreeRail}, {}}; }

SpanPush pressed(const SpanPush& push, double time) { return {push.at, std::min(1.0, time / kPressing) * push.force}; }

bool off_the_pipe(const SpanStair& stair, const SpanSite& site, double station) {
  return std::any_of(stair.hooks.begin(), stair.hooks.end(),
                     [&](const SpanHook& hook) { return !site.pipe.contains(station + hook.x); });
}

double nearest_free(const IntervalSet& free, double wanted) {
  double best = std::numeric_limits<double>::quiet_NaN(), least = std::numeric_limits<double>::infinity();
  for (const Interval& stretch : free) {
    const double at = std::clamp(wanted, stretch.lo, stretch.hi);
    if (std::abs(at - wanted) < least) best = at, least = std::abs(at - wanted);
  }
  if (std::isnan(best)) throw std::invalid_argument("push: the standing stair meets something at every station");
  return best;
}

}  // namespace stowpath
