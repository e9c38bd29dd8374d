#include "sim/mechanism/mass.h"

#include <algorithm>
#include <numbers>

#include "sim/geometry/union_area.h"
#include "sim/trade/lumber.h"
#include "sim/trade/pipe.h"

namespace stowpath {

namespace {

constexpr double kUnknownWood = 450.0;  // [kg/m3], between SPF and Douglas fir
constexpr double kDrawnWithin = 1e-4;   // of a rounded edge: a part in a thousand of a 100 mm board [m]

double squared(Vec2 v) { return dot(v, v); }

// Of unit density and length: area, its middle, and its polar second moment about that. A triangle's is a 36th of its
// area times the sum of its squared sides (by integration).
SectionMass unit_prism(const RoundedPolygon& outline) {
  const std::vector<Vec2> corners = drawn_corners(outline, kDrawnWithin);
  SectionMass area{0.0, corners[0], 0.0};
  for (std::size_t i = 1; i + 1 < corners.size(); ++i) {
    const Vec2 a = corners[0], b = corners[i], c = corners[i + 1];
    const double size = 0.5 * cross(b - a, c - a);
    const double polar = size / 36.0 * (squared(b - a) + squared(c - b) + squared(a - c));
    area = joined(area, {size, (1.0 / 3.0) * (a + b + c), polar});
  }
  return area;
}

SectionMass scaled(const SectionMass& mass, double factor) {
  return {factor * mass.mass, mass.centre, factor * mass.inertia};
}

// Hooks bent of a rod are drawn as square bar outside the round one, and rollers as a block round their disc.
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
      return 0.25 * std::numbers::pi * kSteelDensity;
    default:
      return 0.0;
  }
}

bool is_plate(const Hooks& hooks, const StairPart& part) {
  return part.kind == PartKind::hook && hooks.form == HookForm::plate && part.name != "hook roller";
}

// A plate's rim and parts overlap as it suits the drawing, and weigh once.
void add_plate_hooks(const Scene& scene, const std::vector<StairPart>& stair, std::vector<MassItem>& items) {
  std::vector<std::vector<Vec2>> pieces;
  for (const StairPart& part : stair)
    if (is_plate(scene.stair.hooks, part)) pieces.push_back(drawn_corners(part.outline, kDrawnWithin));
  if (pieces.empty()) return;
  const AreaMoments plate = union_moments(pieces);
  const std::size_t hooks = scene.stair.hooks.stations.size();
  const double density = kSteelDensity * scene.stair.hooks.thickness * static_cast<double>(hooks);
  items.push_back({"hook plate", PartKind::hook, 0, static_cast<int>(hooks),
                   scaled({plate.area, plate.centre, plate.polar}, density)});
}

SectionMass extra_mass(const Extra& extra) {
  const SectionMass area = unit_prism({extra.outline, extra.radius});
  return area.mass > 0.0 ? scaled(area, extra.mass / area.mass) : SectionMass{extra.mass, area.centre, 0.0};
}

std::vector<SectionMass> sums(const std::vector<MassItem>& items, int sections) {
  std::vector<SectionMass> masses(static_cast<std::size_t>(sections));
  for (const MassItem& item : items) {
    SectionMass& section = masses[static_cast<std::size_t>(item.section)];
    section = joined(section, item.all);
  }
  return masses;
}

}  // namespace

double stair_wood_density(const Scene& scene) {
  const Species* species = find_species(scene.stair.side_rails.species);
  return species ? wood_density(species->gravity, scene.stair.side_rails.moisture) : kUnknownWood;
}

SectionMass joined(const SectionMass& a, const SectionMass& b) {
  const double mass = a.mass + b.mass;
  if (mass <= 0.0) return a;
  const double shared = a.mass * b.mass / mass;
  return {mass, (1.0 / mass) * (a.mass * a.centre + b.mass * b.centre),
          a.inertia + b.inertia + shared * squared(b.centre - a.centre)};
}

std::vector<MassItem> mass_items(const Scene& scene, const std::vector<StairPart>& stair) {
  std::vector<MassItem> items;
  const double wood = stair_wood_density(scene);
  for (const StairPart& part : stair) {
    const double density = density_of(part.kind, wood);
    if (density <= 0.0 || is_plate(scene.stair.hooks, part)) continue;
    items.push_back({part.name, part.kind, part.section, static_cast<int>(part.stations.size()),
                     scaled(unit_prism(part.outline), density * total_length(part.stations))});
  }
  add_plate_hooks(scene, stair, items);
  const Casters& casters = scene.stair.casters;
  const auto wheels = static_cast<int>(casters.stations.size());
  if (wheels > 0) {
    const int last = static_cast<int>(scene.stair.sections.size()) - 1;
    items.push_back(
        {"caster", PartKind::caster, last, wheels, {casters.mass * wheels, {casters.along, casters.across}, 0.0}});
  }
  for (const Extra& extra : scene.stair.extras) {
    items.push_back({extra.name, PartKind::extra, extra.section - 1, 1, extra_mass(extra)});
  }
  return items;
}

std::vector<double> weighing_factors(const Scene& scene, const std::vector<MassItem>& items, int sections) {
  const std::vector<SectionMass> computed = sums(items, sections);
  std::vector<double> factors(computed.size(), 1.0);
  for (std::size_t j = 0; j < std::min(computed.size(), scene.stair.weighed.size()); ++j) {
    const std::optional<double>& weighed = scene.stair.weighed[j];
    if (weighed && computed[j].mass > 0.0) factors[j] = *weighed / computed[j].mass;
  }
  return factors;
}

std::vector<SectionMass> section_masses(const Scene& scene, const Linkage& linkage,
                                        const std::vector<StairPart>& stair) {
  const std::vector<MassItem> items = mass_items(scene, stair);
  const std::vector<double> factors = weighing_factors(scene, items, linkage.sections);
  std::vector<SectionMass> masses = sums(items, linkage.sections);
  for (std::size_t j = 0; j < masses.size(); ++j) masses[j] = scaled(masses[j], factors[j]);
  return masses;
}

SectionMass chain_mass(const Linkage& linkage, const std::vector<SectionMass>& masses, int first) {
  SectionMass chain;
  double start = 0.0;
  for (int k = first; k < linkage.sections; ++k) {
    const auto j = static_cast<std::size_t>(k);
    chain = joined(chain, {masses[j].mass, masses[j].centre + Vec2{start, 0.0}, masses[j].inertia});
    start += linkage.length[j];
  }
  return chain;
}

}  // namespace stowpath
