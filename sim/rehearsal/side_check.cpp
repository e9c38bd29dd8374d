#include "sim/rehearsal/side_check.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

namespace stowpath {

namespace {

constexpr double kLongestStep = 1.0 / 30.0;  // [s]
constexpr double kFarthest = 100.0;          // [m]

// Mass times squared arm over inertia. A pin is felt through both, added as floats: from 4e6 on one of them is lost,
// and the world runs away. A rod hung at its end has 3.
constexpr double kMostLever = 1e5;

void demand(bool holds, const std::string& what) {
  if (!holds) throw std::invalid_argument("side world: " + what);
}

// From its centre of mass to the farther of its joints [m].
double longest_arm(const Linkage& linkage, int section, const SectionMass& mass) {
  const double nearer = norm(mass.centre - linkage.proximal(section));
  return section + 1 < linkage.sections ? std::max(nearer, norm(mass.centre - linkage.distal(section))) : nearer;
}

bool positive(double value) { return value > 0.0 && std::isfinite(value); }

}  // namespace

void check_side(const Model& model, const SideSetup& setup) {
  demand(setup.step > 0.0 && setup.step <= kLongestStep, "the step must be over 0 and at most 1/30 s");
  demand(setup.masses.size() == static_cast<std::size_t>(model.linkage.sections), "there must be one mass a section");
  for (int j = 0; j < model.linkage.sections; ++j) {
    const SectionMass& mass = setup.masses[static_cast<std::size_t>(j)];
    const std::string name = "section " + std::to_string(j + 1);
    demand(positive(mass.mass) && positive(mass.inertia), name + " must have a mass and an inertia");
    const double arm = longest_arm(model.linkage, j, mass);
    demand(arm <= kFarthest, name + "'s weight hangs over 100 m away");
    demand(mass.mass * arm * arm <= kMostLever * mass.inertia,
           name + " turns too easily for where its weight hangs: give its parts their size");
  }
}

}  // namespace stowpath
