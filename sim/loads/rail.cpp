#include "sim/loads/rail.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/trade/pipe.h"
#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

void check(const Scene& scene, const HookForces& forces) {
  if (forces.share.size() != scene.stair.hooks.stations.size())
    throw std::invalid_argument("rail_under: a share for every hook");
  if (forces.stations.empty()) throw std::invalid_argument("rail_under: the stair has nowhere to be");
}

std::vector<PointLoad> hook_group(const Scene& scene, const HookForces& forces) {
  std::vector<PointLoad> group;
  for (std::size_t i = 0; i < forces.share.size(); ++i)
    group.push_back({scene.stair.hooks.stations[i], forces.share[i] * norm(forces.total)});
  return group;
}

RailPlace place_at(const Beam& beam, const std::vector<PointLoad>& group, double station, double modulus) {
  const BeamSolution solution = solve_beam(beam, group_at(group, station));
  const BeamPeaks peaks = beam_peaks(solution);
  RailPlace place{station, std::max(peaks.sagging.value, peaks.hogging.value) / modulus, peaks.down.value, {}};
  for (const PointLoad& hook : group) place.sag.push_back(deflection_at(solution, station + hook.at));
  return place;
}

// Moment of an overhang's own weight and of the loads on it about the support it runs out from.
double cantilever_moment(Interval span, double weight, const std::vector<PointLoad>& on, double root) {
  double moment = 0.5 * weight * span.length() * span.length();
  for (const PointLoad& hook : on) moment += hook.force * std::abs(hook.at - root);
  return moment;
}

// Every span as a simple beam of its own, under those loads that stand on it; overhangs as cantilevers.
double hinged_moment_under(const Beam& beam, const std::vector<PointLoad>& loads) {
  const double weight = beam.spread.front().per_length;
  const auto on = [&](Interval span) {
    std::vector<PointLoad> some;
    for (const PointLoad& load : loads)
      if (span.contains(load.at)) some.push_back(load);
    return some;
  };
  const Interval left{beam.ends.lo, beam.supports.front()}, right{beam.supports.back(), beam.ends.hi};
  double most = std::max(cantilever_moment(left, weight, on(left), left.hi),
                         cantilever_moment(right, weight, on(right), right.lo));
  for (std::size_t i = 0; i + 1 < beam.supports.size(); ++i) {
    const Interval span{beam.supports[i], beam.supports[i + 1]};
    const Beam simple{{span.lo, span.hi}, span, beam.stiffness, {{span, weight}}};
    most = std::max(most, beam_peaks(solve_beam(simple, on(span))).sagging.value);
  }
  return most;
}

double hinged_moment(const Beam& beam, const std::vector<PointLoad>& group, Interval stations) {
  constexpr int kSteps = 2000;  // some 200 a span: the moment's flat top is met to a part in 10^4
  double most = 0.0;
  for (int k = 0; k <= kSteps; ++k)
    most = std::max(most, hinged_moment_under(beam, group_at(group, stations.lo + stations.length() * k / kSteps)));
  return most;
}

// How a bracket sits on its wall.
struct Mount {
  double projection = 0.0;  // wall to the pipe's centre [m]
  double below = 0.0;       // pipe's centre down to the plate's lower edge [m]
  double height = 0.0;      // of the plate [m]
};

// The pieces of an outlined bracket that touch its wall, to within a millimetre, are its plate.
Mount outlined_mount(const std::vector<BracketPiece>& pieces) {
  constexpr double kTouches = 0.001;
  double wall = 0.0;
  for (const BracketPiece& piece : pieces)
    for (const Vec2 corner : piece.corners) wall = std::min(wall, corner.x - piece.radius);
  Interval plate{1.0, -1.0};
  for (const BracketPiece& piece : pieces)
    for (const Vec2 corner : piece.corners) {
      if (corner.x - piece.radius > wall + kTouches) continue;
      const Interval here{corner.y - piece.radius, corner.y + piece.radius};
      plate = plate.empty() ? here : hull(plate, here);
    }
  return plate.empty() ? Mount{} : Mount{-wall, -plate.lo, plate.length()};
}

Mount mount_of(const Brackets& brackets) {
  if (brackets.shape == BracketShape::outline) return outlined_mount(brackets.pieces);
  return {brackets.projection, brackets.drop + 0.5 * brackets.plate_height, brackets.plate_height};
}

void load_screws(const Brackets& brackets, BracketLoad& load) {
  const bool plate = brackets.shape == BracketShape::wall_saddle || brackets.shape == BracketShape::outline;
  if (!plate || !brackets.screws || brackets.screws->count < 1) return;
  const Mount mount = mount_of(brackets);
  const int count = brackets.screws->count, upper = std::max(1, count / 2);
  const double lever = (count > 1 ? 0.75 : 0.5) * mount.height;
  const double about_lower = -load.force.y * mount.projection + load.force.x * mount.below;
  const double about_upper = load.force.y * mount.projection + load.force.x * (mount.height - mount.below);
  if (lever > 0.0) load.pull = std::max({0.0, about_lower, about_upper}) / (lever * upper);
  load.shear = std::abs(load.force.y) / count;
}

BracketLoad bracket_load(const Scene& scene, const MovingPeak& peak, Vec2 force) {
  const Brackets& brackets = scene.rail.brackets;
  BracketLoad load;
  load.station = peak.at;
  load.at = peak.position;
  load.force = force;
  load.bending = std::abs(force.y) * std::max(0.0, mount_of(brackets).projection - brackets.plate_thickness) +
                 std::abs(force.x) * brackets.drop;
  load_screws(brackets, load);
  return load;
}

/// The moment at a place of the pipe with the stair at a station, either sign [N m].
double moment_under(const Beam& beam, const std::vector<PointLoad>& group, double place, double station) {
  return std::abs(moment_at(solve_beam(beam, group_at(group, station)), place));
}

/// A scan over the stair's stations, the best of it refined between its neighbours by the golden section.
JointPeak joint_peak(const Beam& beam, const std::vector<PointLoad>& group, double joint, Interval stations) {
  constexpr int kSteps = 400;
  constexpr double kGolden = 0.6180339887498949;
  JointPeak peak{joint, 0.0, stations.lo};
  const auto look = [&](double station) {
    const double moment = moment_under(beam, group, joint, station);
    if (moment > peak.moment) peak = {joint, moment, station};
    return moment;
  };
  for (int k = 0; k <= kSteps; ++k) look(stations.lo + stations.length() * k / kSteps);
  double lo = std::max(stations.lo, peak.at - stations.length() / kSteps);
  double hi = std::min(stations.hi, peak.at + stations.length() / kSteps);
  for (int k = 0; k < 40 && hi > lo; ++k) {
    const double a = hi - kGolden * (hi - lo), b = lo + kGolden * (hi - lo);
    (look(a) < look(b) ? lo : hi) = look(a) < look(b) ? a : b;
  }
  return peak;
}

}  // namespace

PipeStrength pipe_strength(const Pipe& pipe) {
  const PipeGrade* grade = find_pipe_grade(pipe.steel);
  PipeStrength strength;
  strength.listed = tube_section(pipe.diameter, pipe.wall);
  strength.design = tube_section(pipe.diameter, kDesignWallFactor * pipe.wall);
  if (grade != nullptr) {
    strength.yield = grade->yield;
    strength.status = grade->status;
  }
  strength.allowable = strength.yield / kSteelFactor;
  return strength;
}

Section threaded_section(const Pipe& pipe) {
  const double inches = pipe.diameter / kInch;
  const double per_inch = inches < 0.5 ? 27.0 : inches < 0.7 ? 18.0 : inches < 1.2 ? 14.0 : inches < 2.5 ? 11.5 : 8.0;
  const double cut = 0.8 / per_inch * kInch;
  const double wall = std::max(0.0, pipe.wall - cut);
  return tube_section(pipe.diameter - 2.0 * cut, wall);
}

Beam rail_beam(const Rail& rail) {
  const Section section = tube_section(rail.pipe.diameter, rail.pipe.wall);
  Beam beam;
  beam.supports = rail.brackets.stations;
  beam.ends = rail.stations;
  if (!beam.supports.empty()) beam.ends = hull(beam.ends, {beam.supports.front(), beam.supports.back()});
  beam.stiffness = kSteelElasticity * section.second_moment;
  beam.spread = {{beam.ends, steel_tube_mass(rail.pipe.diameter, rail.pipe.wall) * kGravity}};
  return beam;
}

RailCase rail_under(const Scene& scene, const HookForces& forces, int steps) {
  check(scene, forces);
  const Beam beam = rail_beam(scene.rail);
  const std::vector<PointLoad> group = hook_group(scene, forces);
  const PipeStrength strength = pipe_strength(scene.rail.pipe);
  RailCase rail{forces, moving_peaks(beam, group, forces.stations), 0, 0, 0, {}, {}};
  const double moment = std::max(rail.peaks.sagging.value, rail.peaks.hogging.value);
  rail.stress = moment / strength.listed.modulus;
  rail.design_stress = moment / strength.design.modulus;
  rail.hinged_stress = hinged_moment(beam, group, forces.stations) / strength.design.modulus;
  for (const PipeJoint& joint : scene.rail.joints)
    rail.joints.push_back(joint_peak(beam, group, joint.station, forces.stations));
  const int count = forces.stations.length() > 0.0 ? std::max(steps, 1) : 0;
  for (int k = 0; k <= count; ++k)
    rail.places.push_back(place_at(beam, group, forces.stations.lo + forces.stations.length() * k / std::max(count, 1),
                                   strength.listed.modulus));
  return rail;
}

std::vector<BracketLoad> bracket_loads(const Scene& scene, const RailCase& rail) {
  const double size = norm(rail.forces.total);
  const Vec2 way = size > 0.0 ? (1.0 / size) * rail.forces.total : Vec2{0.0, -1.0};
  std::vector<BracketLoad> loads;
  for (const MovingPeak& press : rail.peaks.press) loads.push_back(bracket_load(scene, press, press.value * way));
  for (const MovingPeak& hold : rail.peaks.hold) {
    if (!(hold.value > 0.0)) continue;
    loads.push_back(bracket_load(scene, hold, -hold.value * way));
    loads.back().holds_down = true;
  }
  return loads;
}

BracketLoad worst_bracket(const Scene& scene, const RailCase& rail) {
  const std::vector<BracketLoad> loads = bracket_loads(scene, rail);
  return *std::max_element(loads.begin(), loads.end(), [](const BracketLoad& a, const BracketLoad& b) {
    return (a.holds_down ? 0.0 : norm(a.force)) < (b.holds_down ? 0.0 : norm(b.force));
  });
}

}  // namespace stowpath
