#include "sim/loads/climber.h"

#include <algorithm>
#include <cmath>

#include "sim/mechanism/side_rail_band.h"
#include "sim/trade/section.h"
#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

void look_at_worst(const StandingState& state, ClimberPlace& place) {
  for (const double hook : state.hooks) place.worst_hook = std::max(place.worst_hook, hook);
  for (const double caster : state.casters) place.worst_caster = std::max(place.worst_caster, caster);
}

/// Both side rails together, which share alike.
BeamPeaks both_rails(const StandingStair& stair, const Standpoint& point, double mass) {
  const double at = std::clamp(point.along, stair.beam.ends.lo, stair.beam.ends.hi);
  return beam_peaks(solve_beam(stair.beam, std::vector<PointLoad>{{at, mass * kGravity * stair.sine}}));
}

ClimberPlace place_person(const StandingStair& stair, const Standpoint& point, const LoadCase& load) {
  LoadCase middle = load;
  middle.aside = 0.0;
  ClimberPlace place;
  place.name = point.name;
  place.along = point.along;
  place.height = stair.room(point.section, point.at).y;
  const StandingState even = standing_states_at(stair, middle, point).front();
  place.hooks = sum_of(even.hooks);
  place.floor = stair.scene.stair.casters.stations.empty() ? even.floor : sum_of(even.casters);
  place.joints = even.sides[0].joints;
  place.peaks = both_rails(stair, point, load.mass);
  for (const StandingState& state : standing_states_at(stair, load, point)) look_at_worst(state, place);
  return place;
}

}  // namespace

TreadLoad tread_load(const Scene& scene, const Species& species, double force) {
  const Treads& treads = scene.stair.treads.value();
  const Section section = rectangle_section(treads.depth, treads.thickness);
  TreadLoad load;
  load.span = 2.0 * right_side_rail(scene.stair).lo;
  const double own = species.density * section.area * kGravity;
  load.moment = force * load.span / 4 + own * load.span * load.span / 8;
  load.stress = load.moment / section.modulus;
  load.shear = 1.5 * (force + own * load.span / 2) / section.area;
  const Beam beam{
      {0.0, load.span}, {0.0, load.span}, species.elasticity * section.second_moment, {{{0.0, load.span}, own}}};
  const std::vector<PointLoad> middle{{0.5 * load.span, force}};
  load.deflection = beam_peaks(solve_beam(beam, middle)).down.value;
  return load;
}

double ClimberReport::bending_stress(const ClimberPlace& place) const {
  return std::max(place.peaks.sagging.value, place.peaks.hogging.value) / side_rail_modulus;
}

double ClimberReport::shear_stress(const ClimberPlace& place) const {
  return 1.5 * place.peaks.shear.value / side_rail_area;
}

WoodStrength wood_strength(const Scene& scene) {
  WoodStrength wood;
  wood.species = find_species(scene.stair.side_rails.species);
  wood.assumed = wood.species == nullptr;
  if (wood.assumed) wood.species = find_species("SPF");
  wood.bending = bending_value(*wood.species, scene.stair.side_rails.width);
  wood.shear = wood.species->shear;
  return wood;
}

ClimberReport climb(const Scene& scene, const Model& model) {
  ClimberReport report;
  report.mass = scene.climber.mass;
  report.wood = wood_strength(scene);
  const Section rail = rectangle_section(scene.stair.side_rails.thickness, scene.stair.side_rails.width);
  report.side_rail_modulus = 2.0 * rail.modulus;
  report.side_rail_area = 2.0 * rail.area;
  const StandingStair stair = stand_still(scene, model, report.wood.species->elasticity);
  report.axle_along = stair.axle_along;
  const std::vector<LoadCase> cases = load_cases(scene.climber);
  for (const Standpoint& point : standpoints(stair)) report.places.push_back(place_person(stair, point, cases.front()));
  report.states = standing_states(stair, cases);
  if (scene.stair.treads) report.tread = tread_load(scene, *report.wood.species, report.mass * kGravity);
  return report;
}

}  // namespace stowpath
