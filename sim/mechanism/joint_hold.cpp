#include "sim/mechanism/joint_hold.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/geometry/distance.h"

namespace stowpath {

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kReached = 1.0 * kDegree;  // an angle this near counts as reached [rad]
constexpr double kSwings = 15.0 * kDegree;  // from plumb, for what swings there by itself [rad]
constexpr double kSameAngle = 1e-9;         // [rad]
constexpr double kOnFloor = 1e-6;           // [m]
constexpr double kNearHinge = 0.1;          // what touches nearer than this to the hinge is no rest [m]
constexpr double kDeadCentre = 1e3;         // a line that must pull this many times the weight pulls through the hinge

std::size_t index(int j) { return static_cast<std::size_t>(j); }

/// One unpinned joint with all that turns it.
struct Joint {
  int hinge = 0;
  JointBalance balance;
  bool shut = false;    ///< at its limit, or lying on the section above: it cannot close further
  bool butted = false;  ///< at fold 0: it cannot open the other way
  bool turning = false;

  double slack() const { return std::sin(kReached) * balance.lever; }
  /// What turns it with that tension in the fold line, less what its stops take [N m].
  double left_over(double tension) const {
    const double moment = balance.weight + tension * balance.fold_line;
    if ((moment > 0.0 && shut) || (moment < 0.0 && butted)) return 0.0;
    return moment;
  }
  bool rests(double tension) const {
    const double left = left_over(tension), moment = balance.weight + tension * balance.fold_line;
    const bool pulled = tension > 0.0 && balance.fold_line > 0.0;
    return std::abs(left) <= slack() && (left != moment || pulled || balance.comes_back);
  }
  /// Tensions of the fold line with which it is at rest; empty where there is none [N].
  Interval tensions() const {
    Interval range{0.0, kDeadCentre * balance.load};
    if (!shut) keep_below(1.0, range);
    if (!butted) keep_below(-1.0, range);
    return range;
  }
  /// The tension that keeps it from opening [N].
  double wanted() const { return -balance.weight / balance.fold_line; }

 private:
  // Keeps what leaves no more than the slack turning it that way: closing for 1, opening for -1.
  void keep_below(double way, Interval& range) const {
    const double arm = way * balance.fold_line, room = slack() - way * balance.weight;
    if (arm > 0.0) range.hi = std::min(range.hi, room / arm);
    if (arm < 0.0) range.lo = std::max(range.lo, room / arm);
    if (arm == 0.0 && room < 0.0) range = {1.0, 0.0};
  }
};

bool foot_on_floor(const JointStops& stops, const Configuration& at) {
  const Casters& casters = stops.scene.stair.casters;
  const SectionPoses X_W = place_sections(stops.model.linkage, at);
  const Vec2 axle = X_W[index(stops.model.linkage.sections - 1)] * Vec2{casters.along, casters.across};
  return std::abs(axle.y - stops.model.floor_level - 0.5 * casters.diameter) <= kOnFloor;
}

bool is_body(PartKind kind) { return kind != PartKind::hinge && kind != PartKind::lock_pin && kind != PartKind::hook; }

bool share_stations(const StairPart& a, const StairPart& b) {
  for (const Interval i : a.stations)
    for (const Interval j : b.stations)
      if (gap(i, j) <= 0.0) return true;
  return false;
}

// Whether the section below a hinge would lie on the one above after another degree of folding.
bool lies_on_section_above(const Model& model, const Configuration& at, int hinge) {
  const SectionPoses X_W = place_sections(model.linkage, at);
  const Vec2 axis = X_W[index(hinge)] * model.linkage.distal(hinge);
  for (const StairPart& upper : model.stair) {
    if (upper.section != hinge || !is_body(upper.kind)) continue;
    const Outline placed_upper(placed(upper.outline, X_W[index(hinge)]));
    for (const StairPart& lower : model.stair) {
      if (lower.section != hinge + 1 || !is_body(lower.kind) || !share_stations(upper, lower)) continue;
      const Separation near = separation(placed_upper, Outline(placed(lower.outline, X_W[index(hinge + 1)])));
      const double arm = norm(near.on_b - axis);
      if (arm >= kNearHinge && near.distance <= std::sin(kReached) * arm) return true;
    }
  }
  return false;
}

// By itself a joint that opens is held by the line at whatever fold; whether it lies on the section above then does not
// matter.
bool may_press_shut(const Joint& joint, bool alone) {
  return joint.balance.weight > 0.0 || (!alone && joint.balance.fold_line > 0.0);
}

Joint joint_at(const JointLoads& loads, const JointStops& stops, const HeldPose& pose, int hinge, bool alone) {
  Joint joint{hinge, balance_of(loads, pose.at, hinge, pose.hooked_on)};
  const double fold = pose.at.folds[index(hinge)];
  joint.turning = pose.turning[index(hinge)];
  joint.butted = fold <= kReached;
  joint.shut = fold >= stops.scene.stair.hinges[index(hinge)].limit - kReached;
  if (!joint.shut && fold > 0.5 * std::numbers::pi && may_press_shut(joint, alone))
    joint.shut = lies_on_section_above(stops.model, pose.at, hinge);
  return joint;
}

bool line_can_hold(const Joint& joint) {
  return joint.balance.fold_line > 0.0 && joint.wanted() <= kDeadCentre * joint.balance.load;
}

// The joint for which the fold line is tight: one that turns before one that does not, the upper before the lower.
const Joint* worked_on(const std::vector<Joint>& joints) {
  const Joint* found = nullptr;
  for (const Joint& joint : joints) {
    if (joint.rests(0.0) || joint.balance.weight >= 0.0 || !line_can_hold(joint)) continue;
    if (!found || (joint.turning && !found->turning)) found = &joint;
  }
  return found;
}

// One with which all joints are at rest; else the one that the joint worked on wants.
double tension_for(const Joint* worked, const std::vector<Joint>& joints) {
  Interval range = joints.front().tensions();
  for (const Joint& joint : joints) range = range.empty() ? range : meet(range, joint.tensions());
  if (!range.empty()) return range.middle();
  return worked ? worked->wanted() : 0.0;
}

JointHold why_loose(const Joint& joint, const Joint* worked) {
  const JointBalance& balance = joint.balance;
  if (worked && worked != &joint && balance.fold_line != 0.0) return JointHold::other_joint;
  if (balance.weight > 0.0) return balance.comes_back ? JointHold::sinks : JointHold::closes;
  return balance.fold_line != 0.0 ? JointHold::wrong_pull : JointHold::opens;
}

JointState loose_state(const Joint& joint, const Joint* worked) {
  return {why_loose(joint, worked), joint.balance.comes_back && joint.balance.off_plumb <= kSwings};
}

}  // namespace

bool stands(const Model& model, const Configuration& at) {
  return std::abs(at.lean - model.working_lean) <= kSameAngle &&
         std::all_of(at.folds.begin(), at.folds.end(), [](double fold) { return std::abs(fold) <= kSameAngle; });
}

std::vector<JointState> joint_holds(const JointLoads& loads, const JointStops& stops, const HeldPose& pose) {
  std::vector<JointState> holds(pose.pinned.size());
  const auto loose = std::count(pose.pinned.begin(), pose.pinned.end(), false);
  if (loose == 0) return holds;
  const bool standing = stands(stops.model, pose.at);
  if (pose.hooked_on && loose == 1 && (standing || foot_on_floor(stops, pose.at))) return holds;
  std::vector<Joint> joints;
  for (int k = 0; k < static_cast<int>(pose.pinned.size()); ++k)
    if (!pose.pinned[index(k)]) joints.push_back(joint_at(loads, stops, pose, k, loose == 1));
  const Joint* worked = worked_on(joints);
  const double tension = tension_for(worked, joints);
  for (const Joint& joint : joints) {
    JointState& state = holds[index(joint.hinge)];
    if (standing)
      state.hold = JointHold::buckles;
    else if (!joint.rests(tension))
      state = loose_state(joint, worked);
  }
  return holds;
}

}  // namespace stowpath
