#include "sim/rehearsal/side_world.h"

#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "tests/support/hinged_rods.h"

namespace stowpath {
namespace {

using testing::fall_of_rod;
using testing::lean_in;
using testing::RodFall;

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kEightFeet = 2.4384, kFourFeet = 1.2192;  // [m]

// A10: rod of 8 ft, quarter swing from level K(1/2) T0 / (2 pi), 0.754873 s, passing plumb at 3.473509 rad/s (derived,
// complete elliptic integral by the arithmetic-geometric mean). The step is 1/240 s, the error of second order.
TEST_CASE("side world: a rod let go level swings to plumb in the time of the elliptic integral",
          "[rehearsal][published]") {
  const RodFall fall = fall_of_rod(kEightFeet, {90.0 * kDegree, 0.0}, 1.0 / 240.0);
  CHECK(fall.time == Approx(0.754873).epsilon(2e-5));
  CHECK(-fall.rate == Approx(3.473509).epsilon(1e-4));
}

// A10: from rest 1, 10 and 30 degrees off upright to level, t = sqrt(L / 3g) Int dtheta / sqrt(cos theta0 - cos theta).
TEST_CASE("side world: a rod falls from near upright in the time of the closed form", "[rehearsal][published]") {
  const double level = 90.0 * kDegree;
  CHECK(fall_of_rod(kEightFeet, {179.0 * kDegree, level}, 1.0 / 960.0).time == Approx(2.136017).epsilon(5e-5));
  CHECK(fall_of_rod(kEightFeet, {170.0 * kDegree, level}, 1.0 / 960.0).time == Approx(1.199432).epsilon(5e-5));
  CHECK(fall_of_rod(kEightFeet, {150.0 * kDegree, level}, 1.0 / 960.0).time == Approx(0.751331).epsilon(5e-5));
}

struct TwoLeans {
  double upper = 0.0, lower = 0.0;
};
TwoLeans two_rods_after(double seconds, double step) {
  const Model rods = testing::hinged_rods(2, kFourFeet, 10.0);
  SideWorld world(rods, testing::bare_setup(rods, step), {0.0, 90.0 * kDegree, {}});
  world.start_from_rest();
  const int steps = static_cast<int>(std::lround(seconds / step));
  for (int i = 0; i < steps; ++i) world.step();
  return {lean_in(world, 0), lean_in(world, 1)};
}

// A11, W29: two rods of 4 ft let go level, Runge-Kutta with 40 000 steps.
TEST_CASE("side world: two hinged rods let go level move as the equations of motion say", "[rehearsal][published]") {
  const TwoLeans half = two_rods_after(0.5, 1.0 / 960.0);
  CHECK(half.upper == Approx(0.574889311).margin(1e-4));
  CHECK(half.lower == Approx(1.286156882).margin(1e-4));
  const TwoLeans one = two_rods_after(1.0, 1.0 / 960.0);
  CHECK(one.upper == Approx(-0.811913453).margin(5e-4));
  CHECK(one.lower == Approx(-0.850396548).margin(5e-4));
}
// Of second order: half the step, a quarter of the error. Below 1/960 s the engine's floats take over.
TEST_CASE("side world: the error of two hinged rods falls with the square of the step", "[rehearsal]") {
  const auto error = [](double step) { return std::abs(two_rods_after(1.0, step).upper + 0.811913453); };
  const double coarse = error(1.0 / 60.0), middle = error(1.0 / 120.0), fine = error(1.0 / 240.0);
  CHECK(coarse / middle == Approx(4.0).margin(1.0));
  CHECK(middle / fine == Approx(4.0).margin(1.5));
  CHECK(fine < 2e-3);
}

// A pendulum at 150 degrees, where the plain engine at this step is 7.6 % slow and has lost a third of its amplitude
// after 50 s.
TEST_CASE("side world: a frictionless pendulum keeps its energy", "[rehearsal]") {
  const Model rod = testing::hinged_rods(1, kEightFeet, 20.0);
  SideWorld world(rod, testing::bare_setup(rod, 1.0 / 240.0), {0.0, 150.0 * kDegree, {}});
  world.start_from_rest();
  world.step();
  const double whole = 20.0 * kGravity * kEightFeet, at_first = world.energy();
  double most = 0.0;
  for (int i = 0; i < 50 * 240; ++i) {
    world.step();
    most = std::max(most, std::abs(world.energy() - at_first));
  }
  CHECK(most < 5e-4 * whole);
}

TEST_CASE("side world: a chain that flies free keeps its momentum and its energy", "[rehearsal]") {
  const Model rods = testing::hinged_rods(3, kFourFeet, 8.0);
  SideSetup setup = testing::bare_setup(rods, 1.0 / 960.0);
  setup.on_pipe = setup.gravity = false;
  SideWorld world(rods, setup, {0.0, 0.3, {0.9, -1.4}});
  for (int i = 0; i < 48; ++i) {  // a jerk at one end: 20 N for 0.05 s
    world.push(2, {kFourFeet, 0.0}, {20.0, 0.0});
    world.step();
  }
  const Vec2 given = world.momentum();
  world.step();
  const double at_first = world.energy();
  for (int i = 0; i < 5 * 960; ++i) world.step();
  CHECK(given.x == Approx(1.0).epsilon(1e-3));
  CHECK(norm(world.momentum() - given) < 2e-3);
  CHECK(world.energy() == Approx(at_first).epsilon(5e-3));
}

// Loads at a pin: plumb and at rest it bears the rod; passing plumb from level, m g + m w^2 L/2 = 2.5 m g.
TEST_CASE("side world: the pipe's force is the weight at rest, and two and a half weights at the swing's bottom",
          "[rehearsal]") {
  const Model rod = testing::hinged_rods(1, kEightFeet, 20.0);
  SideWorld still(rod, testing::bare_setup(rod, 1.0 / 960.0), {});
  for (int i = 0; i < 100; ++i) still.step();
  CHECK(still.hook_force().y == Approx(20.0 * kGravity).epsilon(1e-4));
  SideWorld swung(rod, testing::bare_setup(rod, 1.0 / 960.0), {0.0, 90.0 * kDegree, {}});
  swung.start_from_rest();
  while (lean_in(swung, 0) > 0.0) swung.step();
  CHECK(swung.hook_force().y == Approx(2.5 * 20.0 * kGravity).epsilon(2e-3));
}

TEST_CASE("side world: a hinge stops at its limit, and dry friction holds what it can bear", "[rehearsal]") {
  const Model rods = testing::hinged_rods(2, kFourFeet, 10.0);
  SideSetup setup = testing::bare_setup(rods, 1.0 / 960.0);
  setup.hinge_limits = {60.0 * kDegree};
  SideWorld stopped(rods, setup, {0.0, 0.0, {}});
  for (int i = 0; i < 2 * 960; ++i) {
    stopped.turn(0, 200.0);
    stopped.step();
  }
  CHECK(lean_in(stopped, 1) - lean_in(stopped, 0) == Approx(60.0 * kDegree).margin(2e-3));
  // A rod on the pivot, 0.95 and 1.5 times the drag that holds it: radius x mu / sqrt(1 + mu^2) x weight.
  const Model rod = testing::hinged_rods(1, kFourFeet, 10.0);
  const auto turns_under = [&](double share) {
    SideSetup rubbed = testing::bare_setup(rod, 1.0 / 960.0);
    rubbed.friction.hook = 0.5;
    rubbed.hook_radius = 0.1;
    SideWorld world(rod, rubbed, {});
    const double drag = 0.1 * 0.5 / std::hypot(1.0, 0.5) * 10.0 * kGravity;
    for (int i = 0; i < 200; ++i) {
      world.turn(-1, share * drag);
      world.step();
    }
    return lean_in(world, 0);
  };
  CHECK(turns_under(0.95) < 1e-3);
  CHECK(turns_under(1.5) > 8e-3);  // 0.0096 by the excess moment without gravity
}

// Bits, not digits: the recording of a run can be made again.
TEST_CASE("side world: the same run gives the same bits", "[rehearsal]") {
  const TwoLeans first = two_rods_after(1.0, 1.0 / 240.0), again = two_rods_after(1.0, 1.0 / 240.0);
  CHECK(first.upper == again.upper);
  CHECK(first.lower == again.lower);
}

}  // namespace
}  // namespace stowpath
