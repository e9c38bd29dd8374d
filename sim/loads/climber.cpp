#include "sim/loads/climber.h"

#include <algorithm>
#include <cmath>

#include "sim/mechanism/scene_fault.h"
#include "sim/mechanism/side_rail_band.h"
#include "sim/trade/section.h"
#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

constexpr double kBareStep = 0.05;  // between places on a stair without treads [m]

struct Standpoint {
  std::string name;
  int section = 0;
  Vec2 at;  // in the section's frame [m]
};

std::vector<double> section_starts(const Linkage& linkage) {
  std::vector<double> starts{0.0};
  for (int k = 0; k + 1 < linkage.sections; ++k)
    starts.push_back(starts.back() + linkage.length[static_cast<std::size_t>(k)]);
  return starts;
}

Vec2 middle_of(const RoundedPolygon& outline) {
  Vec2 sum;
  for (const Vec2 corner : outline.core) sum = sum + corner;
  return (1.0 / static_cast<double>(outline.core.size())) * sum;
}

std::vector<Standpoint> tread_points(const Model& model) {
  std::vector<Standpoint> points;
  for (const StairPart& part : model.stair)
    if (part.kind == PartKind::tread)
      points.push_back({"tread " + std::to_string(points.size() + 1), part.section, middle_of(part.outline)});
  return points;
}

std::vector<Standpoint> bare_points(const Scene& scene, const Linkage& linkage, double axle) {
  std::vector<Standpoint> points;
  const std::vector<double> starts = section_starts(linkage);
  const int count = static_cast<int>(axle / kBareStep);
  for (int k = count; k >= 0; --k) {
    const double along = axle * k / std::max(count, 1);
    const auto section =
        static_cast<std::size_t>(std::upper_bound(starts.begin(), starts.end(), along) - starts.begin() - 1);
    const Vec2 at{along - starts[section], scene.stair.side_rails.front_face};
    points.push_back({say_length(scene, Nominal{along}) + " along", static_cast<int>(section), at});
  }
  return points;
}

// Everything about the standing stair that no person's place changes.
struct StandingStair {
  const Scene& scene;
  const Model& model;
  SectionPoses X_W;
  std::vector<double> starts;
  double axle_along = 0.0;  // on the chain [m]
  Vec2 axle;                // in the room [m]
  double sine = 0.0;        // of the lean from plumb
  Beam beam;                // both side rails, the stair's own mass on it

  Vec2 room(int section, Vec2 at) const { return X_W[static_cast<std::size_t>(section)] * at; }
};

void load_own_mass(StandingStair& stair) {
  for (std::size_t k = 0; k < stair.model.masses.size(); ++k) {
    const double start = stair.starts[k], length = stair.model.linkage.length[k];
    const double weight = stair.model.masses[k].mass * kGravity * stair.sine;
    stair.beam.spread.push_back({{start, start + length}, weight / length});
  }
}

StandingStair stand_still(const Scene& scene, const Model& model, double elasticity) {
  Configuration pose;
  pose.lean = model.working_lean;
  StandingStair stair{scene, model, place_sections(model.linkage, pose), section_starts(model.linkage), 0, {}, 0, {}};
  const Casters& casters = scene.stair.casters;
  stair.axle_along = stair.starts.back() + casters.along;
  stair.axle = stair.room(model.linkage.sections - 1, {casters.along, casters.across});
  stair.sine = std::sin(model.working_lean);
  const double foot = stair.starts.back() + model.linkage.length[static_cast<std::size_t>(model.linkage.sections - 1)];
  const Section rail = rectangle_section(scene.stair.side_rails.thickness, scene.stair.side_rails.width);
  stair.beam.supports = {0.0, stair.axle_along};
  stair.beam.ends = {std::min(0.0, -scene.stair.above_pivot), std::max(foot, stair.axle_along)};
  stair.beam.stiffness = 2.0 * elasticity * rail.second_moment;
  load_own_mass(stair);
  return stair;
}

// A weight at a place of the room.
struct Weight {
  int section = 0;
  double out = 0.0;
  double force = 0.0;
};

std::vector<Weight> weights_of(const StandingStair& stair, const Standpoint& person, double mass) {
  std::vector<Weight> weights{{person.section, stair.room(person.section, person.at).x, mass * kGravity}};
  for (std::size_t k = 0; k < stair.model.masses.size(); ++k) {
    const SectionMass& own = stair.model.masses[k];
    const int section = static_cast<int>(k);
    weights.push_back({section, stair.room(section, own.centre).x, own.mass * kGravity});
  }
  return weights;
}

void share_supports(const StandingStair& stair, const std::vector<Weight>& weights, ClimberPlace& place) {
  const double pivot = stair.model.linkage.pivot.x;
  double total = 0.0, turning = 0.0;
  for (const Weight& weight : weights) total += weight.force, turning += weight.force * (weight.out - pivot);
  place.floor = turning / (stair.axle.x - pivot);
  place.hooks = total - place.floor;
}

// Only one caster on the floor: the stair rests on three points, and the hooks balance it about its middle.
void tilt_on_one_caster(const Stair& stair, ClimberPlace& place) {
  place.worst_caster = place.floor;
  place.worst_hook = place.hooks;
  if (stair.hooks.stations.size() < 2 || stair.casters.stations.empty()) return;
  const auto [left, right] = std::minmax_element(stair.hooks.stations.begin(), stair.hooks.stations.end());
  double worst = 0.0;
  for (const double caster : stair.casters.stations) {
    const double on_right = (-place.floor * caster - place.hooks * *left) / (*right - *left);
    worst = std::max({worst, on_right, place.hooks - on_right});
  }
  place.worst_hook = std::min(worst, place.hooks);
}

double joint_moment(const StandingStair& stair, const std::vector<Weight>& weights, int hinge, double floor) {
  const double axis = stair.room(hinge, stair.model.linkage.distal(hinge)).x;
  double moment = floor * (stair.axle.x - axis);
  for (const Weight& weight : weights)
    if (weight.section > hinge) moment -= weight.force * (weight.out - axis);
  return moment;
}

double joint_shear(const std::vector<Weight>& weights, int hinge, double floor) {
  double down = -floor;
  for (const Weight& weight : weights)
    if (weight.section > hinge) down += weight.force;
  return std::abs(down);
}

JointLoad joint_load(const StandingStair& stair, const std::vector<Weight>& weights, int hinge, double floor) {
  const Stair& built = stair.scene.stair;
  const Vec2 axis = stair.model.linkage.distal(hinge);
  const Interval band = across_band(built);
  const double shear = 0.5 * joint_shear(weights, hinge, floor);
  const double far_face = std::max(std::abs(axis.y - band.lo), std::abs(axis.y - band.hi));
  JointLoad joint{hinge, 0.5 * joint_moment(stair, weights, hinge, floor), 0, 0, 0, 0, 0};
  const double moment = std::abs(joint.moment);
  joint.hinge_unlocked = moment / far_face + shear;
  joint.hinge_force = joint.hinge_unlocked;
  if (built.locks.empty()) return joint;
  const Vec2 pin{axis.x + 0.25 * built.locks[static_cast<std::size_t>(hinge)].length, band.middle()};
  joint.arm = norm(pin - axis);
  joint.pin = moment / joint.arm;
  joint.scab = moment;
  joint.hinge_force = joint.pin + shear;
  return joint;
}

ClimberPlace place_person(const StandingStair& stair, const Standpoint& person, double mass) {
  ClimberPlace place;
  place.name = person.name;
  place.along = stair.starts[static_cast<std::size_t>(person.section)] + person.at.x;
  place.height = stair.room(person.section, person.at).y;
  const std::vector<Weight> weights = weights_of(stair, person, mass);
  share_supports(stair, weights, place);
  tilt_on_one_caster(stair.scene.stair, place);
  const double at = std::clamp(place.along, stair.beam.ends.lo, stair.beam.ends.hi);
  const std::vector<PointLoad> across{{at, mass * kGravity * stair.sine}};
  place.peaks = beam_peaks(solve_beam(stair.beam, across));
  for (int k = 0; k + 1 < stair.model.linkage.sections; ++k)
    place.joints.push_back(joint_load(stair, weights, k, place.floor));
  return place;
}

TreadLoad tread_load(const Scene& scene, const Species& species) {
  const Treads& treads = *scene.stair.treads;
  const Section section = rectangle_section(treads.depth, treads.thickness);
  const double weight = scene.climber.mass * kGravity;
  TreadLoad load;
  load.span = 2.0 * right_side_rail(scene.stair).lo;
  const double own = species.density * section.area * kGravity;
  load.moment = weight * load.span / 4 + own * load.span * load.span / 8;
  load.stress = load.moment / section.modulus;
  load.shear = 1.5 * (weight + own * load.span / 2) / section.area;
  const Beam beam{
      {0.0, load.span}, {0.0, load.span}, species.elasticity * section.second_moment, {{{0.0, load.span}, own}}};
  const std::vector<PointLoad> middle{{0.5 * load.span, weight}};
  load.deflection = beam_peaks(solve_beam(beam, middle)).down.value;
  return load;
}

}  // namespace

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
  std::vector<Standpoint> points = tread_points(model);
  if (points.empty()) points = bare_points(scene, model.linkage, stair.axle_along);
  for (const Standpoint& person : points) report.places.push_back(place_person(stair, person, report.mass));
  if (scene.stair.treads) report.tread = tread_load(scene, *report.wood.species);
  return report;
}

}  // namespace stowpath
