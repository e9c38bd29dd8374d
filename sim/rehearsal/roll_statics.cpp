#include "sim/rehearsal/roll_statics.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "sim/hoist/jam.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kLeastPush = 1e-3;  // where the search begins [N]
constexpr double kGrowth = 1.02;     // from one push tried to the next
constexpr int kHalvings = 60;

// What the two outermost hooks take sideways.
struct Sideways {
  double left = 0.0, right = 0.0;  // [N]
};

double middle_of_hooks(const SpanStair& stair) {
  const auto less = [](const SpanHook& a, const SpanHook& b) { return a.x < b.x; };
  const auto [least, most] = std::minmax_element(stair.hooks.begin(), stair.hooks.end(), less);
  return 0.5 * (least->x + most->x);
}

double rolling_drag(const SpanCaster& caster, const SpanStair& stair, const SpanFriction& friction) {
  return caster.load * friction.rolling_arm / stair.caster_radius;
}

// Moments about the middle of the hooks.
Sideways sideways(const SpanStair& stair, const SpanFriction& friction, const SpanPush& push, double along) {
  const double middle = middle_of_hooks(stair);
  double moment = cross(push.at - Vec2{middle, 0.0}, push.force);
  for (const SpanCaster& caster : stair.casters) {
    const double drag = std::copysign(rolling_drag(caster, stair, friction), along);
    moment += caster.at.y * drag;  // cross((x, y), (-drag, 0))
  }
  const double shared = -0.5 * push.force.y, turned = moment / stair.spacing();
  return {shared + turned, shared - turned};
}

// Push along the rail over all that drags: negative where the stair stays.
double surplus(const SpanStair& stair, const SpanFriction& friction, const SpanPush& push) {
  double drag = 0.0;
  for (const SpanCaster& caster : stair.casters) drag += rolling_drag(caster, stair, friction);
  const Sideways force = sideways(stair, friction, push, push.force.x);
  const auto less = [](const SpanHook& a, const SpanHook& b) { return a.x < b.x; };
  const auto [left, right] = std::minmax_element(stair.hooks.begin(), stair.hooks.end(), less);
  for (auto hook = stair.hooks.begin(); hook != stair.hooks.end(); ++hook) {
    const double aside = hook == left ? force.left : hook == right ? force.right : 0.0;
    drag += hook_drag(stair, friction, hook->load, aside);
  }
  return std::abs(push.force.x) - drag;
}

// Moments of a row of supports' loads about its end towards `side` [N m].
class Row {
 public:
  explicit Row(double side) : side_(side) {}
  void add(double x, double load) {
    end_ = std::max(end_, side_ * x);
    load_ += load;
    moment_ += load * side_ * x;
  }
  double about_end() const { return load_ > 0.0 ? load_ * end_ - moment_ : 0.0; }

 private:
  double side_, end_ = -std::numeric_limits<double>::infinity(), load_ = 0.0, moment_ = 0.0;
};

SpanPush sized(const SpanPush& push, double force) { return {push.at, force / norm(push.force) * push.force}; }

}  // namespace

std::optional<double> moving_push(const SpanStair& stair, const SpanFriction& friction, const SpanPush& push,
                                  double most) {
  if (push.force.x == 0.0) throw std::invalid_argument("moving push: it has no part along the rail");
  if (!(stair.spacing() > 0.0)) return std::nullopt;
  const auto moves = [&](double force) { return surplus(stair, friction, sized(push, force)) >= 0.0; };
  double high = kLeastPush;
  while (high < most && !moves(high)) high *= kGrowth;
  if (!moves(high)) return std::nullopt;
  double low = high == kLeastPush ? 0.0 : high / kGrowth;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (moves(middle) ? high : low) = middle;
  }
  return high;
}

double push_offset(const SpanStair& stair, const SpanPush& push) {
  return cross(push.force, push.at - Vec2{middle_of_hooks(stair), 0.0}) / norm(push.force);
}

namespace {

bool rolls_aside(const SpanStair& stair) {
  return stair.roller && (stair.roller->side == RollerSide::wall || stair.roller->side == RollerSide::room);
}

}  // namespace

double racking_friction(const SpanStair& stair, double roller_arm, double offset) {
  if (!rolls_aside(stair)) return jam_friction(stair.spacing(), offset);
  return jam_friction_beside_wheel(stair.spacing(), roller_arm / stair.roller->radius, offset);
}

double racking_offset(const SpanStair& stair, const SpanFriction& friction) {
  if (!rolls_aside(stair)) return jam_offset(stair.spacing(), friction.hook);
  return jam_offset(stair.spacing(), GuideDrags{friction.hook, roller_drag(stair, friction)});
}

double tipping_push(const SpanStair& stair, double along, double pushed_at, double held_at) {
  const double lever = pushed_at - held_at;
  if (lever == 0.0) return std::numeric_limits<double>::infinity();
  const double side = std::copysign(1.0, along * lever);
  Row hooks(side), casters(side);
  for (const SpanHook& hook : stair.hooks) hooks.add(hook.x, hook.load);
  for (const SpanCaster& caster : stair.casters) casters.add(caster.at.x, caster.load);
  return (hooks.about_end() + casters.about_end()) / std::abs(lever);
}

}  // namespace stowpath
