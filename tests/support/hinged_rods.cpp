#include "tests/support/hinged_rods.h"

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

}  // namespace stowpath::testing
