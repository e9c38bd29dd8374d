#include "sim/loads/hoist_loads.h"

#include <algorithm>
#include <cmath>

#include "sim/hoist/pull_events.h"
#include "sim/trade/length.h"

namespace stowpath {

namespace {

std::string where_of(const PullSample& sample) {
  std::string text = "raising, lean " + format_degrees(Nominal{sample.pose.lean}, 0);
  const double fold = std::max(std::abs(sample.pose.folds[0]), std::abs(sample.pose.folds[1]));
  if (fold > 0.0) text += ", fold " + format_degrees(Nominal{fold}, 0);
  return text;
}

void raise(WorstLoad& worst, double force, const PullSample& sample) {
  if (force > worst.force) worst = {force, where_of(sample)};
}

double size_of(const Vec3& force) { return std::hypot(norm(force.side), force.along_rail); }

Vec3 operator+(const Vec3& a, const Vec3& b) { return {a.side + b.side, a.along_rail + b.along_rail}; }

// Forces of the rope on what holds its points, gathered by piece.
struct RopeForces {
  Vec3 ceiling, pick;
  std::vector<double> leads;  // [N]
};

RopeForces gather(const PullReport& report, const Linkage& linkage, const PullSample& sample) {
  const auto segments = rope_segments(report.line, linkage, sample.pose);
  const auto forces = point_forces(report.line, segments, sample.segments);
  RopeForces gathered;
  for (std::size_t i = 0; i < forces.size(); ++i) {
    const RopePoint& point = report.line.points[i];
    if (point.section >= 0) {
      gathered.pick = gathered.pick + forces[i];
    } else if (point.name == "ceiling point") {
      gathered.ceiling = gathered.ceiling + forces[i];
    } else if (point.sheave) {
      gathered.leads.push_back(size_of(forces[i]));
    }
  }
  return gathered;
}

void look_at_rope(const PullReport& report, const Linkage& linkage, const PullSample& sample, HoistLoads& loads) {
  raise(loads.line, *std::max_element(sample.segments.begin(), sample.segments.end()), sample);
  raise(loads.dead_end, sample.segments.front(), sample);
  raise(loads.hand, sample.segments.back(), sample);
  const RopeForces forces = gather(report, linkage, sample);
  raise(loads.pick, size_of(forces.pick), sample);
  loads.leads.resize(forces.leads.size());
  for (std::size_t i = 0; i < forces.leads.size(); ++i) raise(loads.leads[i], forces.leads[i], sample);
  if (size_of(forces.ceiling) <= std::hypot(norm(loads.ceiling), loads.ceiling_along)) return;
  loads.ceiling = forces.ceiling.side;
  loads.ceiling_along = forces.ceiling.along_rail;
  loads.ceiling_where = where_of(sample);
}

void look_at_joints(const Model& model, const PullSample& sample, HoistLoads& loads) {
  const Reactions& reactions = sample.reactions;
  if (norm(reactions.hook) > norm(loads.hooks)) {
    loads.hooks = reactions.hook;
    loads.hooks_where = where_of(sample);
  }
  const std::vector<bool>& pinned = model.moves[sample.move].pinned;
  for (std::size_t k = 0; k + 1 < static_cast<std::size_t>(model.linkage.sections); ++k) {
    raise(loads.hinge, norm(reactions.hinge[k]), sample);
    if (!pinned[k] || std::abs(reactions.hinge_moment[k]) <= loads.joint_moment) continue;
    loads.joint_moment = std::abs(reactions.hinge_moment[k]);
    loads.joint_where = where_of(sample);
  }
}

}  // namespace

HoistLoads hoist_loads(const Model& model, const PullReport& report) {
  HoistLoads loads;
  for (const PullSample& sample : report.samples) {
    if (!sample.solvable || sample.slack || sample.segments.empty() || cannot_lift(sample)) continue;
    look_at_rope(report, model.linkage, sample, loads);
    look_at_joints(model, sample, loads);
    if (sample.fold_pull) raise(loads.fold_line, *sample.fold_pull, sample);
  }
  return loads;
}

}  // namespace stowpath
