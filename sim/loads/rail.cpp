#include "sim/loads/rail.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/loads/hinged_pipe.h"
#include "sim/loads/pipe_joint.h"
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

RailPlace place_at(const Influence& influence, const std::vector<PointLoad>& group, double station, double modulus) {
  const std::vector<PointLoad> loads = group_at(group, station);
  BeamPeaks peaks;
  influence.raise_peaks(loads, peaks);
  RailPlace place{station, std::max(peaks.sagging.value, peaks.hogging.value) / modulus, peaks.down.value, {}};
  for (const PointLoad& hook : loads) place.sag.push_back(influence.deflection(hook.at, loads));
  return place;
}

std::vector<RailPlace> places_of(const Influence& influence, const std::vector<PointLoad>& group, Interval stations,
                                 int steps, double modulus) {
  std::vector<RailPlace> places;
  const int count = stations.length() > 0.0 ? std::max(steps, 1) : 0;
  for (int k = 0; k <= count; ++k)
    places.push_back(place_at(influence, group, stations.lo + stations.length() * k / std::max(count, 1), modulus));
  return places;
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
  const Influence influence(rail_beam(scene.rail));
  const std::vector<PointLoad> group = hook_group(scene, forces);
  const PipeStrength strength = pipe_strength(scene.rail.pipe);
  RailCase rail{forces, moving_peaks(influence, group, forces.stations), 0, 0, 0, {}};
  const double moment = std::max(rail.peaks.sagging.value, rail.peaks.hogging.value);
  rail.stress = moment / strength.listed.modulus;
  rail.design_stress = moment / strength.design.modulus;
  rail.hinged_stress = hinged_moment(influence.beam(), group, forces.stations) / strength.design.modulus;
  rail.places = places_of(influence, group, forces.stations, steps, strength.listed.modulus);
  for (const PipeJoint& joint : scene.rail.joints)
    rail.joints.push_back(joint_peak(influence, group, forces.stations, scene.rail.pipe, joint));
  return rail;
}

}  // namespace stowpath
