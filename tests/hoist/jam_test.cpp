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

// Closed form: the two contacts press with F x / L each and drag by their own shares of it.
TEST_CASE("jam: contacts that drag differently jam by the sum of their drags", "[hoist]") {
  CHECK(jam_offset(6.0, GuideDrags{0.25, 0.25}) == Approx(jam_offset(6.0, 0.25)));
  CHECK(jam_offset(1.0, GuideDrags{0.1, 0.0}) == Approx(10.0));
  CHECK(jams(1.0, GuideDrags{0.1, 0.0}, 10.01));
  CHECK_FALSE(jams(1.0, GuideDrags{0.1, 0.0}, 9.99));
  CHECK(jam_friction_beside_wheel(1.0, 0.02, 2.0) == Approx(0.48));
  CHECK(jam_friction_beside_wheel(1.0, 0.6, 2.0) == 0.0);
  CHECK(std::isinf(jam_friction_beside_wheel(1.0, 0.02, 0.0)));
  CHECK_THROWS_AS(jam_offset(1.0, GuideDrags{0.0, 0.0}), std::invalid_argument);
}
