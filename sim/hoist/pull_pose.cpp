#include "sim/hoist/pull_pose.h"

#include <algorithm>
#include <cmath>

#include "sim/mechanism/mass.h"

namespace stowpath {

namespace {

constexpr double kStill = 1e-12;          // a rate under this is rest [rad or m per unit of u]
constexpr double kDeadCentre = 1e3;       // forces of this many weights come of a lever that is next to nothing
constexpr int kMaxSteps = 4000;
constexpr double kBeforeStretch = 1e-12;  // a drag's rates are taken this far before its end at the latest

std::size_t index(int j) { return static_cast<std::size_t>(j); }

double middle_of(Interval range, FrictionEnd end) {
  if (end == FrictionEnd::mean) return range.middle();
  return end == FrictionEnd::least ? range.lo : range.hi;
}

// Dry friction of coefficient mu on a radius: the joint's force passes the centre at radius sin(atan(mu)) times that.
double friction_circle(double mu, double radius) { return radius * mu / std::hypot(1.0, mu); }

int sign_of(double rate) { return std::abs(rate) <= kStill ? 0 : (rate > 0.0 ? 1 : -1); }

bool spans(const Rigging& rope, int hinge) {
  for (std::size_t i = 0; i + 1 < rope.points.size(); ++i)
    if ((rope.points[i].section <= hinge) != (rope.points[i + 1].section <= hinge)) return true;
  return false;
}

bool is_haul_up(const Move& move) { return move.kind == MoveKind::drag || move.kind == MoveKind::hang; }

bool turns(const Segment& segment, std::size_t hinge) { return segment.from.folds[hinge] != segment.to.folds[hinge]; }

// A drag or a hang of the chain below an unpinned hinge; a settling segment keeps its lean.
HingeHold hauled_hinge(const Segment& segment, int hinge) {
  if (segment.kind == SegmentKind::drag) return segment.drag.hinge == hinge ? HingeHold::free : HingeHold::held;
  return segment.from.lean == segment.to.lean ? HingeHold::held : HingeHold::hangs;
}

std::vector<HingeHold> hinge_holds(const PosePlace& place) {
  std::vector<HingeHold> holds;
  const bool hauled = is_haul_up(place.move);
  for (std::size_t k = 0; k < place.move.pinned.size(); ++k)
    holds.push_back(hauled && !place.move.pinned[k] ? hauled_hinge(place.segment, static_cast<int>(k))
                                                    : HingeHold::held);
  return holds;
}

// The hinge that the fold line works on: an unpinned one that it spans, one that turns before one that does not.
int fold_line_hinge(const LiftRig& rig, const PosePlace& place) {
  if (!rig.fold_line || is_haul_up(place.move)) return -1;
  int found = -1;
  for (std::size_t k = place.move.pinned.size(); k-- > 0;) {
    if (place.move.pinned[k] || !spans(*rig.fold_line, static_cast<int>(k))) continue;
    if (turns(place.segment, k)) return static_cast<int>(k);
    found = static_cast<int>(k);
  }
  return found;
}

int turned_hinge(const PosePlace& place, const std::vector<HingeHold>& holds) {
  for (std::size_t k = 0; k < holds.size(); ++k)
    if (holds[k] == HingeHold::held && turns(place.segment, k)) return static_cast<int>(k);
  return -1;
}

double greatest_turn(const Linkage& linkage, const Segment& segment) {
  const auto from = section_leans(linkage, segment.from), to = section_leans(linkage, segment.to);
  double turn = 0.0;
  for (std::size_t j = 0; j < from.size(); ++j) turn = std::max(turn, std::abs(to[j] - from[j]));
  return turn;
}

double weight_of(const LiftRig& rig) {
  double mass = 0.0;
  for (const SectionMass& section : rig.masses) mass += section.mass;
  return mass * kGravity;
}

// A floor only pushes: where it would have to pull, the foot binds and no pull slides it.
void refuse_impossible(const LiftRig& rig, Reactions& found) {
  const double most = kDeadCentre * weight_of(rig);
  bool possible = norm(found.hook) <= most && norm(found.floor) <= most && found.floor.y >= 0.0;
  for (const double tension : found.tension) possible = possible && std::abs(tension) <= most;
  found.solvable = found.solvable && possible;
}

Haul haul_of(int direction) {
  if (direction == 0) return Haul::holding;
  return direction > 0 ? Haul::raising : Haul::lowering;
}

/// One pose with one choice of friction's directions.
class PoseCase {
 public:
  /// @param forward  1 or -1: which way along u the joints turn; 0 leaves friction out
  PoseCase(const LiftRig& rig, const PosePlace& place, int forward, Haul line_haul)
      : rig_(rig),
        place_(place),
        pose_(at(rig.linkage, place.segment, place.u)),
        rates_(rates_at(rig, place)),
        forward_(forward),
        line_haul_(line_haul) {}

  PosePull pull() const;
  PoseWork work(const PosePull& pull) const;

 private:
  StaticsProblem problem(const std::vector<HingeHold>& holds) const;
  FloorContact floor() const;
  std::array<double, kMaxSections> joint_drag() const;
  std::array<double, kMaxSections> turning() const;
  std::optional<PosePull> pull_with_fold_line() const;
  PosePull pull_without() const;
  LineLoad load(const Rigging& rope, const std::vector<double>& shares) const;
  double rope_rate(const Rigging& rope, const std::vector<double>& shares) const {
    return rope_work_rate({rope, shares}, rig_.linkage, pose_, rates_);
  }
  std::vector<double> ideal(const Rigging& rope) const { return tension_shares(rope, Haul::holding); }
  std::vector<double> line_shares() const { return tension_shares(rig_.line, line_haul_); }
  std::vector<double> fold_shares() const;
  double foot_slide() const;

  const LiftRig& rig_;
  const PosePlace& place_;
  Configuration pose_;
  LeanRates rates_;
  int forward_;
  Haul line_haul_;
};

std::array<double, kMaxSections> PoseCase::turning() const {
  std::array<double, kMaxSections> turning{};
  for (int j = 0; j < rig_.linkage.sections; ++j)
    turning[index(j)] = rates_[index(j)] - (j > 0 ? rates_[index(j - 1)] : 0.0);
  return turning;
}

std::array<double, kMaxSections> PoseCase::joint_drag() const {
  const auto rates = turning();
  std::array<double, kMaxSections> drag{};
  for (std::size_t j = 0; j < drag.size(); ++j) {
    const double radius = j == 0 ? friction_circle(rig_.friction.hook, rig_.hook_radius)
                                 : friction_circle(rig_.friction.hinge, rig_.hinge_radius);
    drag[j] = forward_ * sign_of(rates[j]) * radius;
  }
  return drag;
}

double PoseCase::foot_slide() const {
  const FloorContact foot = floor();
  const int last = rig_.linkage.sections - 1;
  const SectionPoses X_W = place_sections(rig_.linkage, pose_);
  return point_velocity(rig_.linkage, X_W, rates_, last, foot.axle).x + rates_[index(last)] * foot.below;
}

FloorContact PoseCase::floor() const {
  FloorContact foot{place_.segment.drag.axle, place_.segment.drag.axle_height - rig_.floor_level, 0.0};
  for (int j = place_.segment.drag.hinge + 1; j + 1 < rig_.linkage.sections; ++j)
    foot.axle.x -= rig_.linkage.length[index(j)];
  return foot;
}

StaticsProblem PoseCase::problem(const std::vector<HingeHold>& holds) const {
  StaticsProblem problem{rig_.linkage, pose_, rig_.masses, holds, {}, {}, {}, joint_drag(), kGravity};
  if (place_.segment.kind != SegmentKind::drag) return problem;
  problem.floor = floor();
  problem.floor->friction = -forward_ * sign_of(foot_slide()) * rig_.friction.floor;
  return problem;
}

LineLoad PoseCase::load(const Rigging& rope, const std::vector<double>& shares) const {
  return line_load(rope, rope_segments(rope, rig_.linkage, pose_), shares);
}

std::vector<double> PoseCase::fold_shares() const {
  const Rigging& rope = *rig_.fold_line;
  return tension_shares(rope, haul_of(forward_ * sign_of(rope_rate(rope, ideal(rope)))));
}

std::optional<PosePull> PoseCase::pull_with_fold_line() const {
  const int hinge = fold_line_hinge(rig_, place_);
  if (hinge < 0) return std::nullopt;
  auto holds = hinge_holds(place_);
  holds[index(hinge)] = HingeHold::free;
  PosePull found;
  found.shares = line_shares();
  found.fold_shares = fold_shares();
  StaticsProblem asked = problem(holds);
  asked.lines = {load(rig_.line, found.shares), load(*rig_.fold_line, found.fold_shares)};
  found.reactions = solve_statics(asked);
  refuse_impossible(rig_, found.reactions);
  if (!found.reactions.solvable || found.reactions.tension[1] < 0.0) return std::nullopt;
  found.hand = found.reactions.tension[0];
  found.fold = found.reactions.tension[1];
  found.turned_hinge = turned_hinge(place_, holds);
  return found;
}

PosePull PoseCase::pull_without() const {
  const auto holds = hinge_holds(place_);
  PosePull found;
  found.shares = line_shares();
  StaticsProblem asked = problem(holds);
  asked.lines = {load(rig_.line, found.shares)};
  found.reactions = solve_statics(asked);
  refuse_impossible(rig_, found.reactions);
  found.on_floor = asked.floor.has_value();
  if (found.reactions.solvable) found.hand = found.reactions.tension[0];
  found.turned_hinge = turned_hinge(place_, holds);
  return found;
}

PosePull PoseCase::pull() const {
  if (auto found = pull_with_fold_line()) return *found;
  return pull_without();
}

PoseWork PoseCase::work(const PosePull& pull) const {
  const auto rates = turning();
  PoseWork work;
  work.gain = energy_rate(rig_.linkage, pose_, rig_.masses, rates_);
  work.hand = pull.hand * rope_rate(rig_.line, ideal(rig_.line));
  const double on_stair = pull.hand * rope_rate(rig_.line, pull.shares);
  work.line_sheaves = work.hand - on_stair;
  if (work.hand < 0.0 && pull.hand < 0.0) {
    work.slack = -on_stair;
    work.hand = work.line_sheaves = 0.0;
  }
  if (pull.fold) {
    work.fold = *pull.fold * rope_rate(*rig_.fold_line, ideal(*rig_.fold_line));
    work.fold_sheaves = work.fold - *pull.fold * rope_rate(*rig_.fold_line, pull.fold_shares);
  }
  if (pull.turned_hinge >= 0)
    work.turning = pull.reactions.hinge_moment[index(pull.turned_hinge)] * rates[index(pull.turned_hinge + 1)];
  work.hook = pull.reactions.drag[0] * std::abs(rates[0]);
  for (std::size_t j = 1; j < rates.size(); ++j) work.hinges += pull.reactions.drag[j] * std::abs(rates[j]);
  if (pull.on_floor) work.floor = -pull.reactions.floor.x * foot_slide();
  return work;
}

}  // namespace

FrictionChoice choose_friction(const Frictions& ranges, FrictionEnd end) {
  return {middle_of(ranges.hook, end), middle_of(ranges.hinge, end), middle_of(ranges.floor, end)};
}

LiftRig lift_rig(const Scene& scene, const Model& model, FrictionEnd end, double hinge_radius) {
  LiftRig rig;
  rig.linkage = model.linkage;
  rig.masses = model.masses;
  rig.line = hoist_rigging(scene);
  rig.fold_line = fold_rigging(scene);
  rig.friction = choose_friction(scene.friction, end);
  rig.hook_radius = scene.stair.hooks.inside;
  rig.hinge_radius = hinge_radius;
  rig.floor_level = model.floor_level;
  const SectionPoint& pick = scene.hoist->pick;
  if (scene.hoist->spreader) {
    SectionMass& pulled = rig.masses[index(pick.section - 1)];
    pulled = joined(pulled, {scene.hoist->spreader->mass, {pick.along, pick.across}});
  }
  return rig;
}

int steps_along(const Linkage& linkage, const Segment& segment, double step) {
  return static_cast<int>(std::clamp(std::ceil(greatest_turn(linkage, segment) / step), 1.0, double{kMaxSteps}));
}

double place_on(const Segment& segment, double v) { return segment.kind == SegmentKind::drag ? v * (2.0 - v) : v; }

bool settles(const PosePlace& place) {
  return is_haul_up(place.move) && place.segment.kind == SegmentKind::straight &&
         place.segment.from.lean == place.segment.to.lean;
}

LeanRates rates_at(const LiftRig& rig, const PosePlace& place) {
  const bool drag = place.segment.kind == SegmentKind::drag;
  return lean_rates(rig.linkage, place.segment, drag ? std::min(place.u, 1.0 - kBeforeStretch) : place.u);
}

double hauling_rate(const LiftRig& rig, const PosePlace& place) {
  const WorkingRope line{rig.line, tension_shares(rig.line, Haul::holding)};
  const double rate = rope_work_rate(line, rig.linkage, at(rig.linkage, place.segment, place.u), rates_at(rig, place));
  return sign_of(rate) == 0 ? 0.0 : rate;
}

PosePull pose_pull(const LiftRig& rig, const PosePlace& place, Haul haul) {
  if (haul == Haul::holding) return PoseCase(rig, place, 0, haul).pull();
  const int hauling = sign_of(hauling_rate(rig, place));
  if (hauling == 0) return PoseCase(rig, place, 1, haul).pull();
  return PoseCase(rig, place, haul == Haul::raising ? hauling : -hauling, haul).pull();
}

PoseWork pose_work(const LiftRig& rig, const PosePlace& place, bool friction) {
  const Haul haul = friction ? haul_of(sign_of(hauling_rate(rig, place))) : Haul::holding;
  const PoseCase forward(rig, place, friction ? 1 : 0, haul);
  const PosePull pull = forward.pull();
  return friction && !pull.reactions.solvable ? pose_work(rig, place, false) : forward.work(pull);
}

}  // namespace stowpath
