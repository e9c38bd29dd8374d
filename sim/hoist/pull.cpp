#include "sim/hoist/pull.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/hoist/pull_changes.h"
#include "sim/hoist/pull_events.h"
#include "sim/hoist/pull_work.h"

namespace stowpath {

namespace {

constexpr int kRefinements = 60;  // golden sections: a quarter of a degree to 1e-15 rad
constexpr double kGolden = 0.6180339887498949;

std::size_t index(int j) { return static_cast<std::size_t>(j); }

double centre_beyond_pivot(const LiftRig& rig, const Configuration& pose) {
  const SectionPoses X_W = place_sections(rig.linkage, pose);
  double mass = 0.0, moment = 0.0;
  for (int j = 0; j < rig.linkage.sections; ++j) {
    const SectionMass& section = rig.masses[index(j)];
    mass += section.mass;
    moment += section.mass * ((X_W[index(j)] * section.centre).x - rig.linkage.pivot.x);
  }
  return mass > 0.0 ? moment / mass : 0.0;
}

double lever_about_pivot(const LiftRig& rig, const Configuration& pose) {
  const auto segments = rope_segments(rig.line, rig.linkage, pose);
  const LineLoad line = line_load(rig.line, segments, tension_shares(rig.line, Haul::holding));
  const SectionPoses X_W = place_sections(rig.linkage, pose);
  double lever = 0.0;
  for (const SectionLoad& load : line.per_unit)
    lever += cross(X_W[index(load.section)] * load.at - rig.linkage.pivot, load.force);
  return lever;
}

void add_side_pull(const LiftRig& rig, const PosePull& raising, PullSample& sample) {
  const auto segments = rope_segments(rig.line, rig.linkage, sample.pose);
  const auto forces = point_forces(rig.line, segments, raising.shares);
  for (std::size_t i = 0; i < forces.size(); ++i) {
    if (rig.line.points[i].section < 0) continue;
    sample.side_out += raising.hand * forces[i].side.x;
    sample.side_along += raising.hand * forces[i].along_rail;
  }
}

void add_geometry(const LiftRig& rig, const PosePlace& place, PullSample& sample) {
  sample.line_length = rope_length(rig.line, rig.linkage, sample.pose);
  if (rig.fold_line) sample.fold_length = rope_length(*rig.fold_line, rig.linkage, sample.pose);
  sample.line_lever = lever_about_pivot(rig, sample.pose);
  sample.centre_out = centre_beyond_pivot(rig, sample.pose);
  sample.energy = potential_energy(rig.linkage, sample.pose, rig.masses);
  sample.hauling = hauling_rate(rig, place);
  const double rise = energy_rate(rig.linkage, sample.pose, rig.masses, rates_at(rig, place));
  sample.raises = place.segment.to.lean > place.segment.from.lean && rise > 0.0;
}

void add_raising(const LiftRig& rig, const PosePlace& place, PullSample& sample) {
  const PosePull raising = pose_pull(rig, place, Haul::raising);
  sample.solvable = raising.reactions.solvable;
  sample.reactions = raising.reactions;
  sample.on_floor = raising.on_floor;
  if (!sample.solvable) return;
  sample.hand_raising = raising.hand;
  sample.slack = raising.hand <= 0.0;
  for (const double share : raising.shares) sample.segments.push_back(share * raising.hand);
  sample.fold_pull = raising.fold;
  if (raising.turned_hinge >= 0 && !settles(place))
    sample.turning = raising.reactions.hinge_moment[index(raising.turned_hinge)];
  add_side_pull(rig, raising, sample);
}

using Figure = std::optional<double> (*)(const PullSample&);

std::optional<double> raising_of(const PullSample& s) {
  return s.solvable && !cannot_lift(s) ? std::optional(s.hand_raising) : std::nullopt;
}
std::optional<double> holding_of(const PullSample& s) {
  return s.solvable ? std::optional(s.hand_holding) : std::nullopt;
}
std::optional<double> lowering_of(const PullSample& s) {
  return s.lets_down ? std::optional(s.hand_lowering) : std::nullopt;
}
std::optional<double> fold_of(const PullSample& s) { return s.solvable ? s.fold_pull : std::nullopt; }
std::optional<double> side_of(const PullSample& s) {
  return s.solvable && !s.slack ? std::optional(std::hypot(s.side_out, s.side_along)) : std::nullopt;
}

std::optional<std::size_t> peak_of(const std::vector<PullSample>& samples, Figure figure) {
  std::optional<std::size_t> peak;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const auto value = figure(samples[i]);
    if (value && (!peak || *value > *figure(samples[*peak]))) peak = i;
  }
  return peak;
}

double rope_hauled(const std::vector<PullSample>& samples, double PullSample::*length) {
  double hauled = 0.0;
  for (std::size_t i = 1; i < samples.size(); ++i) hauled += std::max(0.0, samples[i - 1].*length - samples[i].*length);
  return hauled;
}

/// Takes the samples, one after the other, then refines the greatest.
class Walk {
 public:
  Walk(const LiftRig& rig, const Model& model, double step) : rig_(rig), model_(model), step_(step) {}

  void go();
  void refine(Figure figure);
  std::vector<PullSample> samples;

 private:
  void go_along(std::size_t move, std::size_t segment);
  PullSample at_v(const PullSample& like, double v) const;
  double v_of(const PullSample& sample) const;

  const LiftRig& rig_;
  const Model& model_;
  double step_;
};

void Walk::go_along(std::size_t move, std::size_t segment) {
  const Segment& along = model_.moves[move].segments[segment];
  const int steps = steps_along(rig_.linkage, along, step_);
  for (int i = 0; i <= steps; ++i)
    samples.push_back(sample_pull(rig_, model_, move, segment, place_on(along, static_cast<double>(i) / steps)));
}

void Walk::go() {
  for (std::size_t m = 0; m < model_.moves.size(); ++m)
    for (std::size_t s = 0; is_hauled(model_.moves[m]) && s < model_.moves[m].segments.size(); ++s) go_along(m, s);
}

double Walk::v_of(const PullSample& sample) const {
  const Segment& segment = model_.moves[sample.move].segments[sample.segment];
  return segment.kind == SegmentKind::drag ? 1.0 - std::sqrt(1.0 - sample.u) : sample.u;
}

PullSample Walk::at_v(const PullSample& like, double v) const {
  const Segment& segment = model_.moves[like.move].segments[like.segment];
  return sample_pull(rig_, model_, like.move, like.segment, place_on(segment, v));
}

// Golden sections between the neighbours of the greatest sample; kept as one more sample if it is greater.
void Walk::refine(Figure figure) {
  const auto peak = peak_of(samples, figure);
  if (!peak || *peak == 0 || *peak + 1 >= samples.size()) return;
  const PullSample top = samples[*peak];
  const auto same = [&](const PullSample& s) { return s.move == top.move && s.segment == top.segment && figure(s); };
  if (!same(samples[*peak - 1]) || !same(samples[*peak + 1])) return;
  double lo = v_of(samples[*peak - 1]), hi = v_of(samples[*peak + 1]);
  const auto value = [&](double v) { return figure(at_v(top, v)).value_or(-1e300); };
  for (int i = 0; i < kRefinements; ++i) {
    const double a = hi - kGolden * (hi - lo), b = lo + kGolden * (hi - lo);
    (value(a) > value(b) ? hi : lo) = value(a) > value(b) ? b : a;
  }
  const PullSample best = at_v(top, 0.5 * (lo + hi));
  if (!figure(best) || *figure(best) <= *figure(top)) return;
  samples.insert(samples.begin() + static_cast<std::ptrdiff_t>(*peak) + (best.u > top.u ? 1 : 0), best);
}

std::vector<std::string> assumptions_of(const Scene& scene, const PullReport& report, double hinge_radius) {
  std::vector<std::string> said{
      "the " + report.line.points.back().name + " is taken straight below the last sheave, 1.2 m above the floor",
      "hinge pins are taken as " + std::to_string(std::lround(2000.0 * hinge_radius)) + " mm thick",
      "rope wound round its sheaves is left out of its length"};
  if (scene.hoist->spread > 0.0 && !scene.hoist->spreader)
    said.push_back("two picks without a spreader: the line is taken to pull midway between them");
  if (report.fold_line) said.push_back("the fold line's fall is held or tied on the section where it ends");
  return said;
}

double peak_with(const Scene& scene, const Model& model, PullOptions options, FrictionEnd end) {
  options.friction = end;
  options.step *= 4.0;
  const PullReport report = walk_through(scene, model, options);
  return report.peak_raising ? report.samples[*report.peak_raising].hand_raising : 0.0;
}

double longest(const std::vector<PullSample>& samples, double PullSample::*length, double standing) {
  for (const PullSample& sample : samples) standing = std::max(standing, sample.*length);
  return standing;
}

// Standing at home with everything down, the rope reaches too.
Configuration standing_pose(const Model& model) {
  Configuration pose;
  pose.lean = model.working_lean;
  pose.station = model.home.value_or(model.span.middle());
  return pose;
}

void add_lengths(const LiftRig& rig, const Model& model, PullReport& report) {
  const Configuration standing = standing_pose(model);
  const double line = rope_length(rig.line, rig.linkage, standing);
  report.rope_needed = longest(report.samples, &PullSample::line_length, line) + rig.line.tail + rig.line.knot;
  report.haul_length = rope_hauled(report.samples, &PullSample::line_length);
  if (!rig.fold_line) return;
  const double fold = rope_length(*rig.fold_line, rig.linkage, standing);
  report.fold_rope_needed =
      longest(report.samples, &PullSample::fold_length, fold) + rig.fold_line->tail + rig.fold_line->knot;
  report.fold_haul_length = rope_hauled(report.samples, &PullSample::fold_length);
}

}  // namespace

bool is_hauled(const Move& move) { return move.hooked_on && move.kind != MoveKind::stand; }

PullSample sample_pull(const LiftRig& rig, const Model& model, std::size_t move, std::size_t segment, double u) {
  const PosePlace place{model.moves[move], model.moves[move].segments[segment], u};
  PullSample sample;
  sample.move = move;
  sample.segment = segment;
  sample.u = u;
  sample.progress = (static_cast<double>(segment) + u) / static_cast<double>(place.move.segments.size());
  sample.pose = at(rig.linkage, place.segment, u);
  add_geometry(rig, place, sample);
  add_raising(rig, place, sample);
  const PosePull holding = pose_pull(rig, place, Haul::holding);
  sample.holds = holding.reactions.solvable;
  sample.hand_holding = sample.holds ? holding.hand : 0.0;
  const PosePull lowering = pose_pull(rig, place, Haul::lowering);
  sample.lets_down = lowering.reactions.solvable;
  sample.hand_lowering = sample.lets_down ? lowering.hand : 0.0;
  return sample;
}

PullReport walk_through(const Scene& scene, const Model& model, const PullOptions& options) {
  if (!(options.step > 0.0)) throw std::invalid_argument("the step between poses must be greater than 0");
  const LiftRig rig = lift_rig(scene, model, options.friction, options.hinge_radius);
  PullReport report;
  report.line = rig.line;
  report.fold_line = rig.fold_line;
  report.friction = rig.friction;
  Walk walk(rig, model, options.step);
  walk.go();
  for (const Figure figure : {raising_of, holding_of, lowering_of, fold_of, side_of}) walk.refine(figure);
  report.samples = std::move(walk.samples);
  report.peak_raising = peak_of(report.samples, raising_of);
  report.peak_holding = peak_of(report.samples, holding_of);
  report.peak_lowering = peak_of(report.samples, lowering_of);
  report.peak_fold = peak_of(report.samples, fold_of);
  report.peak_side = peak_of(report.samples, side_of);
  report.events = pull_events(rig, model, report.samples);
  add_lengths(rig, model, report);
  return report;
}

PullReport pull_through(const Scene& scene, const Model& model, const PullOptions& options) {
  PullReport report = walk_through(scene, model, options);
  report.work = work_book(lift_rig(scene, model, options.friction, options.hinge_radius), model, true);
  report.least_friction_peak = peak_with(scene, model, options, FrictionEnd::least);
  report.most_friction_peak = peak_with(scene, model, options, FrictionEnd::most);
  if (options.changes && report.peak_raising)
    report.changes = pull_changes(scene, model, options, report.samples[*report.peak_raising].hand_raising);
  report.assumptions = assumptions_of(scene, report, options.hinge_radius);
  return report;
}

}  // namespace stowpath
