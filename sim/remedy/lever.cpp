#include "sim/remedy/lever.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kMetricStep = 0.001;       // [m]
constexpr double kInchStep = kInch / 16.0;  // [m]
constexpr double kStride = 0.010;           // between amounts where no bound is known [m]

}  // namespace

double LeverSite::length_step() const { return scene.units == FileUnits::inches ? kInchStep : kMetricStep; }

Lever length_lever(const LeverSite& site, ChangeKind kind, Way way, Labour labour, double most, double reach) {
  Lever lever;
  lever.kind = kind;
  lever.way = way;
  lever.labour = labour;
  lever.step = site.length_step();
  lever.most = most;
  lever.reach = reach;
  lever.stride = std::max(1, static_cast<int>(std::floor(kStride / lever.step)));
  return lever;
}

bool has_values(const LeverSite& site, const Lever& lever) {
  return !lever.values.empty() && std::all_of(lever.values.begin(), lever.values.end(), [&](const LeverValue& value) {
    return site.draft.number(value.key).has_value();
  });
}

Lever reversed(Lever lever, Way way) {
  lever.way = way;
  for (LeverValue& value : lever.values) value.rate = -value.rate;
  return lever;
}

bool over_stations(const Model& model, const Finding& finding) {
  return std::any_of(model.moves.begin(), model.moves.end(), [&](const Move& move) {
    return stands_over_stations(move) &&
           std::find(finding.moves.begin(), finding.moves.end(), move.index) != finding.moves.end();
  });
}

bool concerns(const Finding& finding, const std::string& name) {
  return finding.parts[0] == name || finding.parts[1] == name ||
         std::find(finding.also.begin(), finding.also.end(), name) != finding.also.end();
}

std::vector<Lever> levers_for(const LeverSite& site, const Finding& finding) {
  std::vector<Lever> all;
  add_procedure_levers(site, finding, all);
  add_hook_levers(site, finding, all);
  add_stair_levers(site, finding, all);
  add_hoist_levers(site, finding, all);
  add_rail_levers(site, finding, all);
  add_obstacle_levers(site, finding, all);
  std::erase_if(all, [&](const Lever& lever) { return lever.most < lever.step || !has_values(site, lever); });
  std::stable_sort(all.begin(), all.end(), [](const Lever& a, const Lever& b) { return a.labour < b.labour; });
  return all;
}

}  // namespace stowpath
