#include "sim/loads/curved_bar.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "sim/trade/us_units.h"

using namespace stowpath;

// S-SHIG-hook, verified: Shigley, Mechanical Engineering Design, p. 120, a crane hook of 4 by 3/4 in, inside 2 in,
// under 5,000 lbf: 16.9 ksi within and -5.63 ksi without.
TEST_CASE("curved bar: Shigley's crane hook", "[loads][published]") {
  const double ksi = 6894757.293168, force = 5000 * kPoundForce;
  const CurvedBarStress stress = curved_bar_stress(flat_bar(4 * kInch, 0.75 * kInch), 2 * kInch, 4 * kInch);
  CHECK(force * stress.inner / ksi == Approx(16.9).margin(0.05));
  CHECK(force * stress.outer / ksi == Approx(-5.63).margin(0.01));
}

// The neutral line by summing dA / r over thin strips.
TEST_CASE("curved bar: a round bar's stress is that of its strips", "[loads]") {
  const double d = 0.012, inside = 0.020, centre = inside + 0.5 * d, area = std::numbers::pi / 4 * d * d;
  double inverse = 0.0;
  const int strips = 200000;
  for (int i = 0; i < strips; ++i) {
    const double y = -0.5 * d + d * (i + 0.5) / strips, breadth = 2 * std::sqrt(0.25 * d * d - y * y);
    inverse += breadth * d / strips / (centre + y);
  }
  const double neutral = area / inverse;
  const double expected = 1 / area + centre * (neutral - inside) / (area * (centre - neutral) * inside);
  CHECK(curved_bar_stress(round_bar(d), inside, centre).inner == Approx(expected).epsilon(1e-5));
}

TEST_CASE("curved bar: of a large radius it bends like a straight bar", "[loads]") {
  const double d = 0.010, inside = 10.0, lever = 1.0;
  const double straight = 1 / (std::numbers::pi / 4 * d * d) + lever / (std::numbers::pi / 32 * d * d * d);
  CHECK(curved_bar_stress(round_bar(d), inside, lever).inner == Approx(straight).epsilon(1e-3));
}
