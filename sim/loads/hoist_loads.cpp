#include "sim/loads/hoist_loads.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/hoist/pull_events.h"
#include "sim/trade/length.h"

namespace stowpath {

namespace {

std::string pose_text(const Configuration& pose) {
  std::string text = "lean " + format_degrees(Nominal{pose.lean}, 0);
  const double fold = std::max(std::abs(pose.folds[0]), std::abs(pose.folds[1]));
  return fold > 0.0 ? text + ", fold " + format_degrees(Nominal{fold}, 0) : text;
}

std::string_view doing_text(HoistDoing doing) {
  switch (doing) {
    case HoistDoing::raising:
      return "raising";
    case HoistDoing::lowering:
      return "lowering";
    case HoistDoing::held:
      return "held";
    case HoistDoing::parked:
      return "parked";
    case HoistDoing::snagged:
      break;
  }
  return "caught";
}

Vec3 operator+(const Vec3& a, const Vec3& b) { return {a.side + b.side, a.along_rail + b.along_rail}; }

/// How far a force on a section is off the line square to it: an eye screwed into the section's face has that for its
/// axis, whichever face it is in.
double off_square(const SectionPoses& X_W, int section, const Vec3& force) {
  const double size = std::hypot(norm(force.side), force.along_rail);
  if (!(size > 0.0) || section < 0) return 0.0;
  const Pose2& X = X_W[static_cast<std::size_t>(section)];
  const Vec2 across = X * Vec2{0.0, 1.0} - X * Vec2{0.0, 0.0};
  return std::acos(std::min(1.0, std::abs(dot(across, force.side)) / size));
}

/// Forces of the rope on what holds its points, for the tension of each of its segments.
void gather(const Rigging& line, const Linkage& linkage, const Configuration& pose, const std::vector<double>& tensions,
            HoistState& state) {
  const auto forces = point_forces(line, rope_segments(line, linkage, pose), tensions);
  state.line = *std::max_element(tensions.begin(), tensions.end());
  state.dead_end = tensions.front();
  state.hand = tensions.back();
  int held = -1;
  for (std::size_t i = 0; i < forces.size(); ++i) {
    const RopePoint& point = line.points[i];
    if (point.section >= 0) {
      state.pick = state.pick + forces[i];
      held = point.section;
    } else if (point.name == "ceiling point") {
      state.ceiling = state.ceiling + forces[i];
    } else if (point.sheave) {
      state.leads.push_back(forces[i]);
    }
  }
  state.pick_angle = off_square(place_sections(linkage, pose), held, state.pick);
}

std::vector<double> times(double force, std::vector<double> shares) {
  for (double& share : shares) share *= force;
  return shares;
}

/// One lift, pose by pose.
class Lift {
 public:
  Lift(const Scene& scene, const Model& model, const PullReport& report)
      : scene_(scene), model_(model), report_(report) {
    for (const FrictionEnd end : {FrictionEnd::least, FrictionEnd::mean, FrictionEnd::most})
      rigs_.push_back(lift_rig(scene, model, end, PullOptions{}.hinge_radius));
    loads_.drive = drive_pull(scene);
  }

  HoistLoads look();

 private:
  void look_at(const PullSample& sample);
  void count(const PullSample& sample);
  void add(const PullSample& sample, const LiftRig& rig, Haul haul, HoistDoing doing);
  void add_moving(const PullSample& sample, HoistDoing up, HoistDoing down, HoistDoing still);
  void add_snag(const PullSample& sample);
  void add_joints(const PullSample& sample, const PosePull& pull, HoistState& state) const;
  HoistState begun(const PullSample& sample, HoistDoing doing) const;
  PosePlace place_of(const PullSample& sample) const {
    const Move& move = model_.moves[sample.move];
    return {move, move.segments[sample.segment], sample.u};
  }

  const Scene& scene_;
  const Model& model_;
  const PullReport& report_;
  std::vector<LiftRig> rigs_;  // at the ends of the scene's friction, and in its middle
  HoistLoads loads_;
};

HoistState Lift::begun(const PullSample& sample, HoistDoing doing) const {
  HoistState state;
  state.where = std::string(doing_text(doing)) + ", " + pose_text(sample.pose);
  state.doing = doing;
  return state;
}

void Lift::add_joints(const PullSample& sample, const PosePull& pull, HoistState& state) const {
  state.hooks = pull.reactions.hook;
  const std::vector<bool>& pinned = model_.moves[sample.move].pinned;
  for (std::size_t k = 0; k + 1 < static_cast<std::size_t>(model_.linkage.sections); ++k) {
    state.hinges.push_back(norm(pull.reactions.hinge[k]));
    state.moments.push_back(pinned[k] ? std::abs(pull.reactions.hinge_moment[k]) : 0.0);
  }
  state.fold_line = pull.fold.value_or(0.0);
}

// A line that need not hold, as friction does, loads nothing; one that would have to push is counted elsewhere.
void Lift::add(const PullSample& sample, const LiftRig& rig, Haul haul, HoistDoing doing) {
  const PosePull pull = pose_pull(rig, place_of(sample), haul);
  if (!pull.reactions.solvable || !(pull.hand > 0.0)) return;
  HoistState state = begun(sample, doing);
  gather(report_.line, model_.linkage, sample.pose, times(pull.hand, pull.shares), state);
  add_joints(sample, pull, state);
  loads_.states.push_back(std::move(state));
}

void Lift::add_moving(const PullSample& sample, HoistDoing up, HoistDoing down, HoistDoing still) {
  for (const LiftRig& rig : rigs_) {
    add(sample, rig, Haul::raising, up);
    add(sample, rig, Haul::lowering, down);
  }
  add(sample, rigs_.front(), Haul::holding, still);
}

// The stair does not follow: the drive's pull goes through the tackle with no friction to spend it on.
void Lift::add_snag(const PullSample& sample) {
  if (!(loads_.drive.force > 0.0)) return;
  HoistState state = begun(sample, HoistDoing::snagged);
  gather(report_.line, model_.linkage, sample.pose,
         times(loads_.drive.force, tension_shares(report_.line, Haul::holding)), state);
  if (report_.fold_line) state.fold_line = fold_line_snag();
  loads_.states.push_back(std::move(state));
}

// Once for a pose, by the first friction at which nothing is known.
void Lift::count(const PullSample& sample) {
  if (sample.solvable && !sample.slack && cannot_lift(sample)) {
    ++loads_.left_out.cannot_lift;
    return;
  }
  for (const LiftRig& rig : rigs_) {
    const PosePull pull = pose_pull(rig, place_of(sample), Haul::raising);
    if (pull.reactions.solvable && pull.hand > 0.0) continue;
    ++(pull.reactions.solvable ? loads_.left_out.slack : loads_.left_out.dead_centre);
    return;
  }
}

void Lift::look_at(const PullSample& sample) {
  count(sample);
  add_snag(sample);
  if (sample.solvable && !sample.slack && cannot_lift(sample)) return;
  add_moving(sample, HoistDoing::raising, HoistDoing::lowering, HoistDoing::held);
}

HoistLoads Lift::look() {
  for (const PullSample& sample : report_.samples) look_at(sample);
  if (!report_.samples.empty())
    add_moving(report_.samples.back(), HoistDoing::parked, HoistDoing::parked, HoistDoing::parked);
  return std::move(loads_);
}

void add_reason(std::string& text, int poses, const std::string& reason) {
  if (poses == 0) return;
  text += (text.empty() ? "" : ", ") + std::to_string(poses) + " " + reason;
}

}  // namespace

HoistLoads hoist_loads(const Scene& scene, const Model& model, const PullReport& report) {
  return Lift(scene, model, report).look();
}

std::string left_out_note(const HoistLoads& loads) {
  const PosesLeftOut& left = loads.left_out;
  if (left.all() == 0) return "";
  std::string reasons;
  add_reason(reasons, left.dead_centre, "at a dead centre or with the foot stuck");
  add_reason(reasons, left.slack, "with the line slack, where the stair moves by itself");
  add_reason(reasons, left.cannot_lift, "where hauling does not raise it");
  return "no force is known at " + std::to_string(left.all()) +
         (left.all() == 1 ? " pose of the lift: " : " poses of the lift: ") + reasons;
}

}  // namespace stowpath
