#include "sim/loads/hoist_loads.h"

#include <algorithm>
#include <cmath>

#include "sim/hoist/drive_pull.h"
#include "sim/hoist/pull_events.h"
#include "sim/trade/length.h"

namespace stowpath {

namespace {

std::string pose_text(const Configuration& pose) {
  std::string text = "lean " + format_degrees(Nominal{pose.lean}, 0);
  const double fold = std::max(std::abs(pose.folds[0]), std::abs(pose.folds[1]));
  return fold > 0.0 ? text + ", fold " + format_degrees(Nominal{fold}, 0) : text;
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

void look_at_joints(const Model& model, const PullSample& sample, HoistState& state) {
  state.hooks = sample.reactions.hook;
  const std::vector<bool>& pinned = model.moves[sample.move].pinned;
  for (std::size_t k = 0; k + 1 < static_cast<std::size_t>(model.linkage.sections); ++k) {
    state.hinges.push_back(norm(sample.reactions.hinge[k]));
    state.moments.push_back(pinned[k] ? std::abs(sample.reactions.hinge_moment[k]) : 0.0);
  }
  state.fold_line = sample.fold_pull.value_or(0.0);
}

HoistState raising(const Model& model, const PullReport& report, const PullSample& sample) {
  HoistState state;
  state.where = "raising, " + pose_text(sample.pose);
  gather(report.line, model.linkage, sample.pose, sample.segments, state);
  look_at_joints(model, sample, state);
  return state;
}

/// Made fast: nothing moves, and friction is not counted on.
HoistState parked(const Model& model, const PullReport& report, const PullSample& sample) {
  HoistState state = raising(model, report, sample);
  state.where = "parked, " + pose_text(sample.pose);
  state.doing = HoistDoing::parked;
  std::vector<double> tensions = tension_shares(report.line, Haul::holding);
  for (double& tension : tensions) tension *= sample.hand_holding;
  state.ceiling = state.pick = {};
  state.leads.clear();
  gather(report.line, model.linkage, sample.pose, tensions, state);
  return state;
}

/// The stair does not follow: the drive's pull goes through the tackle with no friction to spend it on.
HoistState snagged(const Model& model, const PullReport& report, const PullSample& sample, double drive) {
  HoistState state;
  state.where = "caught, " + pose_text(sample.pose);
  state.doing = HoistDoing::snagged;
  std::vector<double> tensions = tension_shares(report.line, Haul::holding);
  for (double& tension : tensions) tension *= drive;
  gather(report.line, model.linkage, sample.pose, tensions, state);
  return state;
}

bool tells(const PullSample& sample) {
  return sample.solvable && !sample.slack && !sample.segments.empty() && !cannot_lift(sample);
}

}  // namespace

HoistLoads hoist_loads(const Scene& scene, const Model& model, const PullReport& report) {
  HoistLoads loads;
  loads.drive = drive_pull(scene);
  const PullSample* last = nullptr;
  for (const PullSample& sample : report.samples) {
    if (!tells(sample)) {
      ++loads.left_out;
      continue;
    }
    loads.states.push_back(raising(model, report, sample));
    if (loads.drive) loads.states.push_back(snagged(model, report, sample, *loads.drive));
    last = &sample;
  }
  if (last != nullptr && last->holds) loads.states.push_back(parked(model, report, *last));
  return loads;
}

}  // namespace stowpath
