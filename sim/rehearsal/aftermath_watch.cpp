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

Vec2 at_height(Vec2 a, Vec2 b, double height) { return a + ((height - a.y) / (b.y - a.y)) * (b - a); }

}  // namespace

Interval out_below(const RoundedPolygon& outline, double height) {
  const double low = height + outline.radius;
  Interval out{1.0, 0.0};
  const auto add = [&](Vec2 at) { out = widened(out, {at.x - outline.radius, at.x + outline.radius}); };
  for (std::size_t i = 0; i < outline.core.size(); ++i) {
    const Vec2 a = outline.core[i], b = outline.core[(i + 1) % outline.core.size()];
    if (a.y <= low) add(a);
    if ((a.y <= low) != (b.y <= low)) add(at_height(a, b, low));
  }
  return out;
}

void AftermathWatch::begin(const SideWorld& world) {
  begun_ = still_since_ = next_look_ = world.time();
  leans_ = leans_in(world);
}

void AftermathWatch::go_on(const SideWorld& world) { begun_ = still_since_ = world.time(); }

double AftermathWatch::kinetic(const SideWorld& world) const {
  const SectionPoses X_W = world.poses();
  double energy = 0.0;
  for (int j = 0; j < model_.linkage.sections; ++j) {
    const SectionMotion motion = world.motion(j);
    const SectionMass& mass = world.masses()[index(j)];
    const Vec2 velocity = motion.velocity + motion.rate * quarter_turn(X_W[index(j)].turn(mass.centre));
    energy += 0.5 * mass.mass * norm_squared(velocity) + 0.5 * mass.inertia * motion.rate * motion.rate;
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
  watch_ends(world, after);
  watch_strokes(world, after);
  after.energy = std::max(after.energy, kinetic(world));
  const int held = scene_.hoist ? scene_.hoist->pick.section - 1 : 0;
  after.turned = std::max(after.turned, std::abs(leans_in(world)[index(held)] - leans_[index(held)]));
  if (now >= next_look_) {
    next_look_ = now + look_;
    watch_below(world, after);
  }
  if (!still(world)) still_since_ = now;
}

// Of a folded pack the foot hangs near the pipe, and a hinge goes fastest.
void AftermathWatch::watch_ends(const SideWorld& world, Aftermath& after) const {
  const Linkage& linkage = model_.linkage;
  const auto look = [&](int section, Vec2 at, const std::string& name) {
    const double speed = norm(world.point_velocity(section, at));
    if (speed <= after.top_speed) return;
    after.top_speed = speed;
    after.fastest = name;
  };
  const int last = linkage.sections - 1;
  look(last, {linkage.length[index(last)], 0.0}, "the foot");
  for (int k = 0; k < last; ++k) look(k, linkage.distal(k), "hinge " + std::to_string(k + 1));
  look(0, linkage.proximal(0), "the top");
}

void AftermathWatch::watch_strokes(const SideWorld& world, Aftermath& after) const {
  for (const WorldTouch& touch : world.new_touches()) {
    if (touch.speed < kHit) continue;
    const bool swapped = world.parts()[index(touch.a)].section < 0;
    const Stroke stroke{world.parts()[index(swapped ? touch.b : touch.a)].name,
                        world.parts()[index(swapped ? touch.a : touch.b)].name, world.time() - after.begins,
                        touch.speed, touch.energy};
    if (!after.first) after.first = stroke;
    if (!after.hardest || stroke.energy > after.hardest->energy) after.hardest = stroke;
  }
}

void AftermathWatch::watch_below(const SideWorld& world, Aftermath& after) const {
  const SectionPoses X_W = world.poses();
  for (const WorldPart& part : world.parts()) {
    if (part.section < 0) continue;
    const BoundingDisc disc = bounding_disc(part.shape);
    const double turning = std::abs(world.motion(part.section).rate) * disc.radius;
    if (norm(world.point_velocity(part.section, disc.centre)) + turning < kPasses) continue;
    const Interval out = out_below(placed(part.shape, X_W[index(part.section)]), model_.floor_level + head_height_);
    if (out.empty()) continue;
    after.under = widened(after.under, out);
    for (const Interval& stretch : part.stations) after.under_stations = widened(after.under_stations, stretch);
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
