#include "sim/loads/loads.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "sim/loads/hook_forces.h"

namespace stowpath {

namespace {

struct WorstForce {
  double force = 0.0;  // [N]
  std::string where;
};

/// As many places for the series as a curve needs: a stair at home hardly moves.
int series_steps(Interval stations) {
  constexpr double kAtHome = 0.5;  // [m]
  return stations.length() < kAtHome ? 8 : 400;
}

void look_at_rail(const Scene& scene, const Model& model, const std::optional<HoistLoads>& hoist, LoadsReport& report) {
  if (scene.rail.brackets.stations.size() < 2) {
    report.rail_problem = "a pipe on fewer than two brackets is no beam";
    return;
  }
  for (const HookForces& forces : all_hook_forces(model, report.climber))
    report.rails.push_back(rail_under(scene, forces));
  if (hoist)
    for (const HookForces& forces : hoisted_hook_forces(scene, model, *hoist))
      report.rails.push_back(rail_under(scene, forces, series_steps(forces.stations)));
  report.sag = pipe_sag(scene, model);
}

/// The most that any bracket gets while the stair is not broken, and where.
WorstForce worst_on_bracket(const Scene& scene, const std::vector<RailCase>& rails) {
  WorstForce worst;
  for (const RailCase& rail : rails) {
    if (rail.forces.ultimate) continue;
    const double force = norm(worst_bracket(scene, rail).force);
    if (force > worst.force) worst = {force, rail.forces.name};
  }
  return worst;
}

WorstForce worst_on_ceiling(const Scene& scene, const HoistLoads& hoist) {
  WorstForce worst;
  for (const HoistState& state : hoist.states) {
    const double factor = state.moving() ? scene.dynamic_factor : 1.0;
    const double force = factor * std::hypot(norm(state.ceiling.side), state.ceiling.along_rail);
    if (force > worst.force) worst = {force, state.where};
  }
  return worst;
}

std::vector<FramingLoad> look_at_framing(const Scene& scene, const std::vector<RailCase>& rails,
                                         const std::optional<HoistLoads>& hoist) {
  const WorstForce bracket = worst_on_bracket(scene, rails);
  std::vector<FramedPoint> points = brackets_framed(scene, bracket.force, bracket.where);
  if (hoist) {
    const WorstForce ceiling = worst_on_ceiling(scene, *hoist);
    for (const FramedPoint& point : ceiling_framed(scene, ceiling.force, ceiling.where)) points.push_back(point);
  }
  return framing_loads(scene, points);
}

}  // namespace

std::vector<RailCase> telling_rails(const std::vector<RailCase>& rails) {
  const auto kind = [](const HookForces& forces) {
    return std::tuple(forces.ultimate, forces.moving, forces.total.x != 0.0);
  };
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
  report.framing = look_at_framing(scene, report.rails, hoist);
  return report;
}

}  // namespace stowpath
