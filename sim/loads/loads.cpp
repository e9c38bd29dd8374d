#include "sim/loads/loads.h"

#include "sim/loads/hoisted_worst.h"
#include "sim/loads/hook_forces.h"

namespace stowpath {

namespace {

HookForces hoisted_hook_forces(const Scene& scene, const Model& model, const HoistLoads& hoist) {
  const std::size_t hooks = scene.stair.hooks.stations.size();
  const bool rolls = scene.hoist && scene.hoist->rolls;
  const Interval stations = model.home && !rolls ? Interval{*model.home, *model.home} : model.span;
  const HoistedWorst worst = hoisted_worst(hoist);
  return {worst.hooks_where, -scene.dynamic_factor * worst.hooks,
          std::vector<double>(hooks, 1.0 / static_cast<double>(hooks)), stations};
}

void look_at_rail(const Scene& scene, const Model& model, const std::optional<HoistLoads>& hoist, LoadsReport& report) {
  if (scene.rail.brackets.stations.size() < 2) {
    report.rail_problem = "a pipe on fewer than two brackets is no beam";
    return;
  }
  for (const HookForces& forces : standing_hook_forces(scene, model, report.climber))
    report.rails.push_back(rail_under(scene, forces));
  if (hoist && norm(hoisted_worst(*hoist).hooks) > 0.0)
    report.rails.push_back(rail_under(scene, hoisted_hook_forces(scene, model, *hoist)));
  report.sag = pipe_sag(scene, model);
}

}  // namespace

LoadsReport look_at_loads(const Scene& scene, const Model& model, const std::optional<HoistLoads>& hoist) {
  LoadsReport report;
  report.climber = climb(scene, model);
  report.pipe = pipe_strength(scene.rail.pipe);
  look_at_rail(scene, model, hoist, report);
  report.hardware = hardware_list({scene, model, report.climber, report.rails, hoist});
  return report;
}

}  // namespace stowpath
