#include "sim/mechanism/mass.h"

#include <cmath>
#include <numbers>

#include "sim/trade/lumber.h"

namespace stowpath {

namespace {

constexpr double kSteel = 7850.0;       // [kg/m3], common practice
constexpr double kUnknownWood = 450.0;  // [kg/m3], between SPF and Douglas fir
constexpr double kDrawnWithin = 1e-4;   // of a rounded edge: a part in a thousand of a 100 mm board [m]

struct Area {
  double size = 0.0;  // [m2]
  Vec2 centre;        // [m]
};

Area area_of(const RoundedPolygon& outline) {
  const std::vector<Vec2> corners = drawn_corners(outline, kDrawnWithin);
  Area area;
  Vec2 moment;
  for (std::size_t i = 1; i + 1 < corners.size(); ++i) {
    const double size = 0.5 * cross(corners[i] - corners[0], corners[i + 1] - corners[0]);
    area.size += size;
    moment = moment + (size / 3.0) * (corners[0] + corners[i] + corners[i + 1]);
  }
  area.centre = area.size > 0.0 ? (1.0 / area.size) * moment : corners[0];
  return area;
}

void add(SectionMass& to, double mass, Vec2 centre) {
  if (mass <= 0.0) return;
  to.centre = (1.0 / (to.mass + mass)) * (to.mass * to.centre + mass * centre);
  to.mass += mass;
}

double wood_density_of(const Scene& scene) {
  const Species* species = find_species(scene.stair.side_rails.species);
  return species ? species->density : kUnknownWood;
}

// Hooks are drawn as square bar outside the round one.
double density_of(PartKind kind, double wood) {
  switch (kind) {
    case PartKind::side_rail:
    case PartKind::tread:
    case PartKind::scab:
    case PartKind::spacer_block:
    case PartKind::caster_block:
    case PartKind::handrail:
      return wood;
    case PartKind::hook:
      return 0.25 * std::numbers::pi * kSteel;
    default:
      return 0.0;
  }
}

}  // namespace

std::vector<SectionMass> section_masses(const Scene& scene, const Linkage& linkage,
                                        const std::vector<StairPart>& stair) {
  std::vector<SectionMass> masses(static_cast<std::size_t>(linkage.sections));
  const double wood = wood_density_of(scene);
  for (const StairPart& part : stair) {
    const double density = density_of(part.kind, wood);
    if (density <= 0.0) continue;
    const Area area = area_of(part.outline);
    double length = 0.0;
    for (const Interval stretch : part.stations) length += stretch.length();
    add(masses[static_cast<std::size_t>(part.section)], density * area.size * length, area.centre);
  }
  const Casters& casters = scene.stair.casters;
  add(masses.back(), casters.mass * static_cast<double>(casters.stations.size()), {casters.along, casters.across});
  for (const Extra& extra : scene.stair.extras)
    add(masses[static_cast<std::size_t>(extra.section - 1)], extra.mass, area_of({extra.outline, extra.radius}).centre);
  return masses;
}

SectionMass chain_mass(const Linkage& linkage, const std::vector<SectionMass>& masses, int first) {
  SectionMass chain;
  double start = 0.0;
  for (int k = first; k < linkage.sections; ++k) {
    const auto j = static_cast<std::size_t>(k);
    add(chain, masses[j].mass, masses[j].centre + Vec2{start, 0.0});
    start += linkage.length[j];
  }
  return chain;
}

}  // namespace stowpath
