#include "sim/loads/hook_forces.h"

#include <algorithm>

namespace stowpath {

namespace {

const ClimberPlace& heaviest_place(const ClimberReport& report) {
  return *std::max_element(report.places.begin(), report.places.end(),
                           [](const ClimberPlace& a, const ClimberPlace& b) { return a.hooks < b.hooks; });
}

double heaviest_share(const ClimberReport& report, double all) {
  double one = 0.0;
  for (const ClimberPlace& place : report.places) one = std::max(one, place.worst_hook);
  return std::min(1.0, one / all);
}

}  // namespace

std::vector<HookForces> standing_hook_forces(const Scene& scene, const Model& model, const ClimberReport& report) {
  const ClimberPlace& place = heaviest_place(report);
  const std::size_t hooks = scene.stair.hooks.stations.size();
  const HookForces alike{"one person on " + place.name,
                         {0.0, -place.hooks},
                         std::vector<double>(hooks, 1.0 / static_cast<double>(hooks)),
                         model.span};
  std::vector<HookForces> ways{alike};
  if (hooks < 2 || !(place.hooks > 0.0)) return ways;
  const double most = heaviest_share(report, place.hooks), rest = (1.0 - most) / static_cast<double>(hooks - 1);
  for (std::size_t i = 0; i < hooks; ++i) {
    ways.push_back(alike);
    ways.back().name += ", one caster in the air";
    ways.back().share.assign(hooks, rest);
    ways.back().share[i] = most;
  }
  return ways;
}

}  // namespace stowpath
