#include "sim/mechanism/round_slabs.h"

#include <cmath>
#include <numbers>

namespace stowpath {

std::vector<RoundSlab> round_slabs(double radius) {
  constexpr int kSlabs = 8;
  std::vector<RoundSlab> slabs;
  for (int k = 0; k < kSlabs; ++k) {
    const double a0 = 0.5 * std::numbers::pi * k / kSlabs, a1 = 0.5 * std::numbers::pi * (k + 1) / kSlabs;
    const double near = radius * std::sin(a0), far = radius * std::sin(a1), half = radius * std::cos(a0);
    slabs.push_back({{near, far}, half, std::hypot(half, far) - radius});
  }
  return slabs;
}

std::vector<Interval> both_ways(const RoundSlab& slab, double station) {
  return {{station - slab.off.hi, station - slab.off.lo}, {station + slab.off.lo, station + slab.off.hi}};
}

}  // namespace stowpath
