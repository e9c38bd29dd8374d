#include "sim/loads/loads.h"

#include <algorithm>
#include <tuple>

#include "sim/loads/hook_forces.h"

namespace stowpath {

namespace {

void look_at_rail(const Scene& scene, const Model& model, const std::optional<HoistLoads>& hoist, LoadsReport& report) {
  if (scene.rail.brackets.stations.size() < 2) {
    report.rail_problem = "a pipe on fewer than two brackets is no beam";
    return;
  }
  for (const HookForces& forces : all_hook_forces(model, report.climber))
    report.rails.push_back(rail_under(scene, forces));
  if (hoist)
    for (const HookForces& forces : hoisted_hook_forces(scene, model, *hoist))
      report.rails.push_back(rail_under(scene, forces));
  report.sag = pipe_sag(scene, model);
}

}  // namespace

std::vector<RailCase> telling_rails(const std::vector<RailCase>& rails) {
  const auto kind = [](const HookForces& forces) { return std::tuple(forces.ultimate, forces.moving, forces.total.x != 0.0); };
  std::vector<RailCase> out;
  for (const RailCase& rail : rails) {
    const auto same = [&](const RailCase& other) { return kind(other.forces) == kind(rail.forces); };
    const auto told = std::find_if(out.begin(), out.end(), same);
    if (told == out.end())
      out.push_back(rail);
    else if (rail.design_stress > told->design_stress)
      *told = rail;
  }
  return out;
}

LoadsReport look_at_loads(const Scene& scene, const Model& model, const std::optional<HoistLoads>& hoist) {
  LoadsReport report;
  report.climber = climb(scene, model);
  report.pipe = pipe_strength(scene.rail.pipe);
  look_at_rail(scene, model, hoist, report);
  report.hardware = hardware_list({scene, model, report.climber, report.rails, hoist});
  return report;
}

}  // namespace stowpath
