#include "sim/rehearsal/aftermath_watch.h"

#include <algorithm>
#include <cmath>

namespace stowpath {

namespace {

constexpr double kLongest = 12.0;                                         // [s]
constexpr double kStillRate = 0.02, kStillSpeed = 0.01, kStillFor = 0.5;  // [rad/s, m/s, s]
constexpr double kHit = 0.1;                                              // [m/s]
constexpr double kPasses = 0.05;   // a part slower than this strikes nobody [m/s]
constexpr double kAtLimit = 0.01;  // [rad]
constexpr double kHandRoom = 0.3;  // a person takes up this much either side [m]

std::size_t index(int i) { return static_cast<std::size_t>(i); }

Interval widened(Interval all, Interval more) { return all.empty() ? more : hull(all, more); }

}  // namespace

void AftermathWatch::begin(const SideWorld& world) {
  begun_ = still_since_ = next_look_ = world.time();
  leans_ = leans_in(world);
}

double AftermathWatch::kinetic(const SideWorld& world) const {
  const SectionPoses X_W = world.poses();
  double energy = 0.0;
  for (int j = 0; j < model_.linkage.sections; ++j) {
    const SectionMotion motion = world.motion(j);
    const Vec2 velocity =
        motion.velocity + motion.rate * quarter_turn(X_W[index(j)].turn(model_.masses[index(j)].centre));
    energy += 0.5 * model_.masses[index(j)].mass * norm_squared(velocity) +
              0.5 * model_.masses[index(j)].inertia * motion.rate * motion.rate;
  }
  return energy;
}

bool AftermathWatch::still(const SideWorld& world) const {
  for (int j = 0; j < model_.linkage.sections; ++j) {
    const SectionMotion motion = world.motion(j);
    if (std::abs(motion.rate) > kStillRate || norm(motion.velocity) > kStillSpeed) return false;
  }
  return true;
}

void AftermathWatch::watch(const SideWorld& world, Aftermath& after) {
  const double now = world.time();
  const int last = model_.linkage.sections - 1;
  after.top_speed =
      std::max(after.top_speed, norm(world.point_velocity(last, {model_.linkage.length[index(last)], 0.0})));
  after.energy = std::max(after.energy, kinetic(world));
  const int held = scene_.hoist ? scene_.hoist->pick.section - 1 : 0;
  after.turned = std::max(after.turned, std::abs(leans_in(world)[index(held)] - leans_[index(held)]));
  for (const WorldTouch& touch : world.new_touches()) {
    if (touch.speed < kHit || !after.first_hit.empty()) continue;
    const bool swapped = world.parts()[index(touch.a)].section < 0;
    after.first_hit = world.parts()[index(swapped ? touch.b : touch.a)].name;
    after.first_other = world.parts()[index(swapped ? touch.a : touch.b)].name;
    after.hit_time = now - after.begins;
    after.hit_speed = touch.speed;
    after.hit_energy = touch.energy;
  }
  if (now >= next_look_) {
    next_look_ = now + look_;
    watch_below(world, after);
  }
  if (!still(world)) still_since_ = now;
}

void AftermathWatch::watch_below(const SideWorld& world, Aftermath& after) const {
  const SectionPoses X_W = world.poses();
  for (const WorldPart& part : world.parts()) {
    if (part.section < 0) continue;
    const RoundedPolygon shape = placed(part.shape, X_W[index(part.section)]);
    const BoundingDisc disc = bounding_disc(part.shape);
    if (norm(world.point_velocity(part.section, disc.centre)) < kPasses) continue;
    for (const Vec2 corner : shape.core) {
      if (corner.y - shape.radius > model_.floor_level + head_height_) continue;
      after.under = widened(after.under, {corner.x - shape.radius, corner.x + shape.radius});
      for (const Interval& stretch : part.stations) after.under_stations = widened(after.under_stations, stretch);
    }
  }
}

bool AftermathWatch::over(const SideWorld& world) const {
  return world.time() - still_since_ > kStillFor || world.time() - begun_ > kLongest;
}

void AftermathWatch::end(const SideWorld& world, const Crew& crew, const std::vector<HookSpell>& spells,
                         Aftermath& after) const {
  after.ends = world.time();
  after.at_rest = still(world) && after.ends - still_since_ >= kStillFor;
  after.hooks_left = std::any_of(spells.begin(), spells.end(), [](const HookSpell& spell) { return spell.off; });
  after.stopped_by = lies_against(world);
  if (crew.rig() == nullptr || after.under.empty()) return;
  const RopePoint& hand = crew.rig()->line.points.back();
  after.hand_under = hand.section < 0 && hand.at.x > after.under.lo - kHandRoom &&
                     hand.at.x < after.under.hi + kHandRoom && hand.station > after.under_stations.lo - kHandRoom &&
                     hand.station < after.under_stations.hi + kHandRoom;
}

std::string AftermathWatch::lies_against(const SideWorld& world) const {
  std::vector<std::string> names;
  const auto add = [&](const std::string& name) {
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  };
  for (const auto& [a, b] : world.touching()) {
    if (world.parts()[index(a)].section < 0) add(world.parts()[index(a)].name);
    if (world.parts()[index(b)].section < 0) add(world.parts()[index(b)].name);
  }
  const auto leans = leans_in(world);
  for (int k = 0; k + 1 < model_.linkage.sections; ++k) {
    const double fold = model_.linkage.fold_sign[index(k)] * (leans[index(k + 1)] - leans[index(k)]);
    const double limit = scene_.stair.hinges[index(k)].limit;
    if (!world.pinned()[index(k)] && (fold < kAtLimit || fold > limit - kAtLimit))
      add("the stop of hinge " + std::to_string(k + 1));
  }
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

}  // namespace stowpath
