#include "sim/rehearsal/step_cut.h"

#include <algorithm>
#include <cmath>

#include "sim/hoist/motion.h"
#include "sim/rehearsal/world_contacts.h"
#include "sim/rehearsal/world_outline.h"

namespace stowpath {

namespace {

constexpr int kMostSlices = 64;  // the thinnest things that the world has, at 15 m/s

std::size_t index(int i) { return static_cast<std::size_t>(i); }

Pose2 pose_of(const WorldPart& part, const SectionPoses& X_W) {
  return part.section < 0 ? Pose2{} : X_W[index(part.section)];
}

SectionMotion motion_of(const WorldPart& part, std::span<const SectionMotion> motions) {
  return part.section < 0 ? SectionMotion{} : motions[index(part.section)];
}

// Of the part's frame, seen at a place in the room.
Vec2 velocity_at(const WorldPart& part, const SectionPoses& X_W, std::span<const SectionMotion> motions, Vec2 p_W) {
  const SectionMotion motion = motion_of(part, motions);
  return motion.velocity + motion.rate * quarter_turn(p_W - pose_of(part, X_W).p);
}

}  // namespace

StepCut::StepCut(const std::vector<WorldPart>& parts, const WorldContacts& contacts)
    : parts_(parts), contacts_(contacts), least_(2.0 * kWorldSkin) {
  for (int a = 0; a < static_cast<int>(parts.size()); ++a)
    for (int b = a + 1; b < static_cast<int>(parts.size()); ++b) {
      const WorldPart &first = parts[index(a)], &second = parts[index(b)];
      if (!can_touch(first, second, false, true)) continue;
      const double thick = world_thickness(first.shape) + world_thickness(second.shape);
      const bool smaller = first.outline.disc().radius <= second.outline.disc().radius;
      pairs_.push_back({smaller ? a : b, smaller ? b : a, std::min(2.0 * kWorldSkin, 0.25 * thick),
                        !can_touch(first, second, true, true)});
      least_ = std::min(least_, pairs_.back().most);
    }
  for (const WorldPart& part : parts)
    if (part.section >= 0) reach_ = std::max(reach_, norm(part.outline.disc().centre) + part.outline.disc().radius);
}

// How far the pair may come towards each other in the step, were it whole; 0 where that does not bring them together.
double StepCut::way(const PairWay& pair, const SectionPoses& X_W, std::span<const SectionMotion> motions,
                    double step) const {
  const WorldPart &a = parts_[index(pair.a)], &b = parts_[index(pair.b)];
  const BoundingDisc &disc = a.outline.disc(), &other = b.outline.disc();
  const Vec2 centre = pose_of(a, X_W) * disc.centre;
  const double turning = std::abs(motion_of(a, motions).rate - motion_of(b, motions).rate);
  const double speed =
      norm(velocity_at(a, X_W, motions, centre) - velocity_at(b, X_W, motions, centre)) + turning * disc.radius;
  const double way = (speed + kGravity * step) * step;
  if (norm(pose_of(b, X_W) * other.centre - centre) > disc.radius + other.radius + way) return 0.0;
  const double distance = part_distance(a, b, X_W);
  return distance >= 0.0 && distance <= way ? way : 0.0;
}

// What touches already, or cannot, is the engine's to hold apart, or nobody's.
bool StepCut::apart(const PairWay& pair) const {
  const PartPair key{std::min(pair.a, pair.b), std::max(pair.a, pair.b)};
  return !(pair.off_pipe && contacts_.hooks_on_pipe) && contacts_.touching.count(key) == 0 &&
         contacts_.aside.count(key) == 0 && !contacts_.butted(key.first, key.second);
}

int StepCut::slices(const SectionPoses& X_W, std::span<const SectionMotion> motions, double step) const {
  double fastest = 0.0;
  for (const SectionMotion& motion : motions)
    fastest = std::max(fastest, norm(motion.velocity) + std::abs(motion.rate) * reach_);
  const double farthest = 2.0 * (fastest + kGravity * step) * step;  // two sections go against each other at most
  if (farthest <= least_) return 1;
  double most = 1.0;
  for (const PairWay& pair : pairs_) {
    if (farthest <= pair.most) continue;
    const double whole = way(pair, X_W, motions, step);
    if (whole > most * pair.most && apart(pair)) most = whole / pair.most;
  }
  return static_cast<int>(std::min<double>(kMostSlices, std::ceil(most)));
}

}  // namespace stowpath
