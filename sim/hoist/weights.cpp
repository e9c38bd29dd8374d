#include "sim/hoist/weights.h"

#include <algorithm>
#include <numbers>

#include "sim/geometry/union_area.h"
#include "sim/mechanism/mass.h"
#include "sim/trade/figure.h"
#include "sim/trade/lumber.h"
#include "sim/trade/pipe.h"

namespace stowpath {

namespace {

bool is_wood(PartKind kind) { return kind != PartKind::hook && kind != PartKind::caster && kind != PartKind::extra; }

std::string wood_basis(const Scene& scene) {
  const SideRails& rails = scene.stair.side_rails;
  const std::string density = format_decimal(Nominal{stair_wood_density(scene)}, 0) + " kg/m3";
  if (!find_species(rails.species)) return "wood at " + density + ", a judgement";
  return rails.species + " at " + density + " (" + format_decimal(Nominal{100.0 * rails.moisture}, 0) + " % moisture)";
}

std::string basis_of(const Scene& scene, PartKind kind) {
  if (kind == PartKind::hook) return "steel at " + format_decimal(Nominal{kSteelDensity}, 0) + " kg/m3";
  return is_wood(kind) ? wood_basis(scene) : "as the scene gives it";
}

std::optional<SourceStatus> status_of(const Scene& scene, PartKind kind) {
  if (kind == PartKind::hook) return SourceStatus::memory;
  if (!is_wood(kind)) return std::nullopt;
  return find_species(scene.stair.side_rails.species) ? SourceStatus::derived : SourceStatus::judgement;
}

// A hook is drawn in many pieces, and treads come one by one.
void merge(std::vector<BillRow>& rows, BillRow fresh) {
  const auto same = std::find_if(rows.begin(), rows.end(), [&](const BillRow& row) {
    return row.what == fresh.what && row.section == fresh.section && row.basis == fresh.basis;
  });
  if (same == rows.end()) {
    rows.push_back(std::move(fresh));
    return;
  }
  same->count += fresh.count;
  same->total += fresh.total;
}

std::string scaling_text(double factor, double weighed) {
  return ", times " + format_decimal(Nominal{factor}, 3) + " to make up the weighed " +
         format_decimal(Nominal{weighed}, 1) + " kg";
}

BillRow row_of(const Scene& scene, const MassItem& item) {
  const bool hook = item.kind == PartKind::hook;
  return {hook ? "hook" : item.name,  item.section, item.count, 0.0, item.all.mass, basis_of(scene, item.kind),
          status_of(scene, item.kind)};
}

void finish(std::vector<BillRow>& rows, const Scene& scene, const std::vector<double>& factors) {
  for (BillRow& row : rows) {
    const auto j = static_cast<std::size_t>(row.section);
    if (row.what == "hook") row.count = static_cast<int>(scene.stair.hooks.stations.size());
    if (factors[j] != 1.0) row.basis += scaling_text(factors[j], *scene.stair.weighed[j]);
    row.total *= factors[j];
    row.each = row.total / row.count;
  }
  std::stable_sort(rows.begin(), rows.end(), [](const BillRow& a, const BillRow& b) {
    return a.section != b.section ? a.section < b.section : a.total > b.total;
  });
}

void add_spreader(const Scene& scene, Weights& weights) {
  if (!scene.hoist || !scene.hoist->spreader || scene.hoist->spreader->mass <= 0.0) return;
  weights.on_line = scene.hoist->spreader->mass;
  weights.rows.push_back(
      {"spreader", -1, 1, weights.on_line, weights.on_line, basis_of(scene, PartKind::extra), std::nullopt});
}

// Both of a pin or a leaf and of what is drawn round it, along the rail [m3].
double volume_of(const StairPart& part) {
  const AreaMoments face = union_moments({drawn_corners(part.outline, 1e-4)});
  return face.area * total_length(part.stations);
}

double screw_volume(const std::optional<Screws>& screws, int places) {
  if (!screws) return 0.0;
  return places * screws->count * 0.25 * std::numbers::pi * screws->diameter * screws->diameter * screws->thread;
}

// Threads alone: heads and what passes through the iron are not given.
double screws_volume(const Stair& stair, const Model& model) {
  double volume = screw_volume(stair.hooks.screws, static_cast<int>(stair.hooks.stations.size()));
  for (const Hinge& hinge : stair.hinges) volume += screw_volume(hinge.screws, 4);  // two leaves on each side
  for (const Lock& lock : stair.locks) volume += screw_volume(lock.screws, 2);
  const auto treads = std::count_if(model.stair.begin(), model.stair.end(),
                                    [](const StairPart& part) { return part.kind == PartKind::tread; });
  if (stair.treads) volume += screw_volume(stair.treads->screws, 2 * static_cast<int>(treads));
  return volume;
}

double left_out(const Scene& scene, const Model& model) {
  double volume = screws_volume(scene.stair, model);
  for (const StairPart& part : model.stair)
    if (part.kind == PartKind::lock_pin || part.kind == PartKind::hinge) volume += volume_of(part);
  return kSteelDensity * volume;
}

}  // namespace

Weights weigh(const Scene& scene, const Model& model) {
  Weights weights;
  const std::vector<MassItem> items = mass_items(scene, model.stair);
  const std::vector<double> factors = weighing_factors(scene, items, model.linkage.sections);
  for (const MassItem& item : items) merge(weights.rows, row_of(scene, item));
  finish(weights.rows, scene, factors);
  for (std::size_t j = 0; j < model.masses.size(); ++j) {
    const bool weighed = j < scene.stair.weighed.size() && scene.stair.weighed[j];
    weights.sections.push_back({model.masses[j], model.masses[j].mass / factors[j], weighed});
    weights.stair += model.masses[j].mass;
  }
  weights.left_out = left_out(scene, model);
  add_spreader(scene, weights);
  return weights;
}

}  // namespace stowpath
