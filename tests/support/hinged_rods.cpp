#include "tests/support/hinged_rods.h"

#include <numbers>

namespace stowpath::testing {

Model hinged_rods(int count, double length, double mass) {
  Model model;
  model.linkage.sections = count;
  for (int j = 0; j < count; ++j) {
    model.linkage.length[static_cast<std::size_t>(j)] = length;
    model.masses.push_back({mass, {0.5 * length, 0.0}, mass * length * length / 12.0});
  }
  model.linkage.fold_sign = {1.0, 1.0};
  return model;
}

SideSetup bare_setup(const Model& model, double step) {
  SideSetup setup;
  setup.step = step;
  setup.masses = model.masses;
  return setup;
}

double lean_in(const SideWorld& world, int section) {
  return world.turns()[static_cast<std::size_t>(section)] + 0.5 * std::numbers::pi;
}

RodFall fall_of_rod(double length, RodLeans leans, double step) {
  const Model rod = hinged_rods(1, length, 20.0);
  SideWorld world(rod, bare_setup(rod, step), {0.0, leans.from, {}});
  world.start_from_rest();
  for (double before = leans.from;;) {
    const double slower = world.motion(0).rate;
    world.step();
    const double now = lean_in(world, 0), share = (before - leans.mark) / (before - now);
    // Rates stand half a step back, at both ends of the step.
    if (now <= leans.mark)
      return {world.time() - step * (1.0 - share),
              world.motion(0).rate + (share - 0.5) * (world.motion(0).rate - slower)};
    before = now;
  }
}

}  // namespace stowpath::testing
