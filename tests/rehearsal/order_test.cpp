// How the side world's errors shrink with its step: the table in docs/method.md, section 12.
#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/support/hinged_rods.h"
#include "tests/support/two_rods.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kEightFeet = 2.4384, kFourFeet = 1.2192;  // [m]

using ErrorAt = std::function<double(double step)>;

// Slope of the error over the step, in logarithms, from 1/30 s to 1/240 s: below that the engine's floats show.
double order_of(const ErrorAt& error) {
  return std::log(std::abs(error(1.0 / 30.0) / error(1.0 / 240.0))) / std::log(8.0);
}

// Both of second order, which is a slope of 2; the next term of the error moves it by a tenth or so at 1/30 s.
void check_order(const ErrorAt& error, double fine) {
  for (const double rate : {30.0, 60.0, 120.0, 240.0, 480.0, 960.0}) UNSCOPED_INFO(rate << "/s: " << error(1.0 / rate));
  CHECK(order_of(error) == Approx(2.0).margin(0.2));
  CHECK(std::abs(error(1.0 / 960.0)) < fine);
}

// Quarter swing of a rod on a pin, from rest: K(sin(lean / 2)) sqrt(2 L / 3 g), the complete elliptic integral.
TEST_CASE("order: a pendulum at large angles", "[rehearsal]") {
  for (const double degrees : {60.0, 120.0, 150.0, 170.0}) {
    const double exact =
        std::comp_ellint_1(std::sin(0.5 * degrees * kDegree)) * std::sqrt(2.0 * kEightFeet / (3.0 * kGravity));
    CAPTURE(degrees, exact);
    check_order(
        [&](double step) {
          return testing::fall_of_rod(kEightFeet, {degrees * kDegree, 0.0}, step).time - exact;
        },
        3e-6);
  }
}

// A10: from 10 and 30 degrees off upright to level (derived).
TEST_CASE("order: a rod that falls from near upright", "[rehearsal][published]") {
  const auto falls = [](double degrees, double exact) {
    CAPTURE(degrees);
    check_order(
        [&](double step) {
          return testing::fall_of_rod(kEightFeet, {degrees * kDegree, 90.0 * kDegree}, step).time - exact;
        },
        3e-6);
  };
  falls(170.0, 1.199432);
  falls(150.0, 0.751331);
}

// Two equal rods, small swings: the roots of (7/36) x^2 - (7/6) x + 3/4 = 0 with x = w^2 L / g are 3 -+ sqrt(36/7), and
// the lower rod swings by (3 - 8 x / 3) / x of the upper one.
struct Mode {
  double root = 0.0, period = 0.0;  // [s]

  double ratio() const { return (3.0 - 8.0 * root / 3.0) / root; }
  double linear_period() const { return 2.0 * std::numbers::pi * std::sqrt(kFourFeet / kGravity / root); }
};
// W27 (derived).
const Mode kTogether{3.0 - std::sqrt(36.0 / 7.0), 2.589037}, kAgainst{3.0 + std::sqrt(36.0 / 7.0), 0.965257};

// Over whole swings of the upper rod, by its passes through plumb; `step_on` goes on by `step` and gives its lean.
double period_of(double start, double step, const std::function<double()>& step_on) {
  constexpr int kSwings = 4;
  double before = start, first = 0.0, time = 0.0;
  for (int passes = 0;;) {
    const double now = step_on();
    time += step;
    if (before > 0.0 && now <= 0.0) {
      const double at = time - step * now / (now - before);
      if (passes == 0) first = at;
      if (passes++ == kSwings) return (at - first) / kSwings;
    }
    before = now;
  }
}

double period_in_world(const Mode& mode, double swing, double step) {
  const Model rods = testing::hinged_rods(2, kFourFeet, 10.0);
  SideWorld world(rods, testing::bare_setup(rods, step), {0.0, swing, {swing * (mode.ratio() - 1.0)}});
  world.start_from_rest();
  return period_of(swing, step, [&] {
    world.step();
    return testing::lean_in(world, 0);
  });
}

double exact_period(const Mode& mode, double swing) {
  constexpr double kPlumb = -0.5 * std::numbers::pi, kFine = 1e-3;
  const Model model = testing::hinged_rods(2, kFourFeet, 10.0);
  const testing::TwoRods rods{{model.masses[0], model.masses[1]}, model.linkage.distal(0)};
  testing::TwoTurns at{{kPlumb + swing, kPlumb + swing * mode.ratio()}, {}};
  return period_of(swing, kFine, [&] {
    at = testing::run_two_rods(rods, at, kFine, 1);
    return at.turn[0] - kPlumb;
  });
}

// The equations of motion at two swings, and what is left at none: swings lengthen the period with their square.
TEST_CASE("order: two rods swing in their modes with the tabled periods", "[rehearsal][published]") {
  for (const Mode& mode : {kTogether, kAgainst}) {
    CHECK(mode.linear_period() == Approx(mode.period).margin(5e-7));
    const double wide = exact_period(mode, 0.02), narrow = exact_period(mode, 0.01);
    CHECK(narrow - (wide - narrow) / 3.0 == Approx(mode.period).margin(1e-6));
    check_order([&](double step) { return period_in_world(mode, 0.02, step) - wide; }, 1e-5);
  }
}

// W28 (derived): let go level, the upper rod begins to fall with 9 g / 7 L, the lower one to rise with 3 g / 7 L.
TEST_CASE("order: two rods let go level begin as the equations of motion say", "[rehearsal][published]") {
  const double step = 1.0 / 3840.0;
  const Model rods = testing::hinged_rods(2, kFourFeet, 10.0);
  SideWorld world(rods, testing::bare_setup(rods, step), {0.0, 90.0 * kDegree, {}});
  world.start_from_rest();
  const double upper = world.motion(0).rate, lower = world.motion(1).rate;
  world.step();
  CHECK((world.motion(0).rate - upper) / step == Approx(-10.341658).epsilon(1e-4));
  CHECK((world.motion(1).rate - lower) / step == Approx(3.447219).epsilon(1e-4));
}

}  // namespace
}  // namespace stowpath
