#include "sim/hoist/jam.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <stdexcept>

using namespace stowpath;

namespace {

// By statics: a push F along the guide at offset x presses both contacts with N = F x / L; friction there is 2 mu N.
bool friction_wins(double spacing, double mu, double offset) {
  const double normal = std::abs(offset) / spacing;
  return 2.0 * mu * normal >= 1.0;
}

}  // namespace

TEST_CASE("jam: the rule agrees with the moments about the contacts", "[hoist]") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> spacing(0.05, 0.6), mu(0.05, 0.8), offset(-1.0, 1.0);
  int jammed = 0;
  for (int i = 0; i < 1000; ++i) {
    const double L = spacing(random), m = mu(random), x = offset(random);
    CHECK(jams(L, m, x) == friction_wins(L, m, x));
    jammed += jams(L, m, x) ? 1 : 0;
  }
  CHECK(jammed > 300);
  CHECK(jammed < 700);
}

TEST_CASE("jam: a push on the axis never jams", "[hoist]") {
  CHECK_FALSE(jams(0.1, 5.0, 0.0));
  CHECK(std::isinf(jam_friction(0.1, 0.0)));
  CHECK(jam_friction(0.1, jam_offset(0.1, 0.25)) == Approx(0.25));
}

TEST_CASE("jam: no friction or a negative spacing is refused", "[hoist]") {
  CHECK_THROWS_AS(jam_offset(0.1, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(jam_offset(-0.1, 0.2), std::invalid_argument);
}
