#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <vector>

#include "sim/rehearsal/side_world.h"
#include "tests/reference/chipmunk_rods.h"
#include "tests/support/hinged_rods.h"
#include "tests/support/two_rods.h"

// Two hinged sections are let go: our side world, another engine and the equations of motion must tell the same.

using namespace stowpath;
using stowpath::testing::TwoRods;
using stowpath::testing::TwoTurns;

namespace {

constexpr double kFourFeet = 1.2192;  // [m]

// Two unlike sections, heavier than rods at one end: no symmetry to hide behind.
Model unlike_sections() {
  Model model = testing::hinged_rods(2, 1.5, 20.0);
  model.linkage.length[1] = 1.3;
  model.masses[0] = {21.0, {0.83, 0.04}, 4.6};
  model.masses[1] = {13.0, {0.55, -0.03}, 2.1};
  return model;
}

TwoRods rods_of(const Model& model) { return {{model.masses[0], model.masses[1]}, model.linkage.distal(0)}; }

// Level and straight, at rest: the pack at the top with its line gone and its fold open.
constexpr TwoTurns kLevel{};

TwoTurns exact(const Model& model, double time) { return testing::run_two_rods(rods_of(model), kLevel, time, 20'000); }

TwoTurns in_side_world(const Model& model, double time, double step) {
  SideWorld world(model, testing::bare_setup(model, step), {0.0, 0.5 * std::numbers::pi, {}});
  world.start_from_rest();
  for (long i = std::lround(time / step); i > 0; --i) world.step();
  return {{world.turns()[0], world.turns()[1]}, {world.motion(0).rate, world.motion(1).rate}};
}

double apart(const TwoTurns& a, const TwoTurns& b) {
  return std::max(std::abs(a.turn[0] - b.turn[0]), std::abs(a.turn[1] - b.turn[1]));
}

}  // namespace

// Two uniform 4 ft rods from level. Derived by RK4 with 40 000 steps and step halving (1e-13); angles from straight
// down, so a turn is that less a quarter.
TEST_CASE("let go: the equations of motion give the tabled values", "[reference][published]") {
  const Model model = testing::hinged_rods(2, kFourFeet, 10.0);
  const TwoTurns begins = testing::two_rods_rates(rods_of(model), kLevel);
  // 9 g / 7 L down for the upper, 3 g / 7 L up for the lower, in closed form.
  CHECK(begins.rate[0] == Approx(-10.341658).margin(1e-6));
  CHECK(begins.rate[1] == Approx(3.447219).margin(1e-6));
  struct Row {
    double time, first, second, first_rate, second_rate;
  };
  for (const Row& row : {Row{0.25, 1.258869013, 1.651366332, -2.343658069, 0.272587721},
                         Row{0.50, 0.574889311, 1.286156882, -2.631096066, -3.994456367},
                         Row{1.00, -0.811913453, -0.850396548, -4.373248476, 0.880593929}}) {
    const TwoTurns end = exact(model, row.time);
    CHECK(end.turn[0] == Approx(row.first - 0.5 * std::numbers::pi).margin(1e-8));
    CHECK(end.turn[1] == Approx(row.second - 0.5 * std::numbers::pi).margin(1e-8));
    CHECK(end.rate[0] == Approx(row.first_rate).margin(1e-7));
    CHECK(end.rate[1] == Approx(row.second_rate).margin(1e-7));
  }
}

TEST_CASE("let go: the equations of motion keep their energy, whatever the sections", "[reference]") {
  const Model model = unlike_sections();
  const TwoRods rods = rods_of(model);
  const double before = testing::two_rods_energy(rods, kLevel);
  CHECK(testing::two_rods_energy(rods, exact(model, 1.5)) == Approx(before).margin(1e-8));
}

TEST_CASE("let go: Chipmunk comes to the equations of motion as the step shrinks, in proportion to it", "[reference]") {
  for (const Model& model : {testing::hinged_rods(2, kFourFeet, 10.0), unlike_sections()}) {
    const TwoTurns end = exact(model, 1.0);
    std::vector<double> errors;
    for (const double rate : {960.0, 1920.0, 3840.0, 7680.0})
      errors.push_back(apart(testing::run_in_chipmunk(rods_of(model), kLevel, 1.0, 1.0 / rate), end));
    CAPTURE(errors);
    for (std::size_t i = 1; i < errors.size(); ++i) CHECK(errors[i - 1] / errors[i] == Approx(2.0).epsilon(0.15));
    CHECK(errors.back() < 0.002);
  }
}

TEST_CASE("let go: the side world comes to the equations of motion as the step shrinks, with its square",
          "[reference]") {
  for (const Model& model : {testing::hinged_rods(2, kFourFeet, 10.0), unlike_sections()}) {
    const TwoTurns end = exact(model, 1.0);
    const double coarse = apart(in_side_world(model, 1.0, 1.0 / 60.0), end);
    const double fine = apart(in_side_world(model, 1.0, 1.0 / 960.0), end);
    CAPTURE(coarse, fine);
    CHECK(std::log(coarse / fine) / std::log(960.0 / 60.0) == Approx(2.0).margin(0.15));
    CHECK(fine < 2e-4);
  }
}

TEST_CASE("let go: both engines come to each other", "[reference]") {
  const Model model = unlike_sections();
  double before = 1e9;
  for (const double rate : {480.0, 1920.0, 7680.0}) {
    const double now =
        apart(in_side_world(model, 1.0, 1.0 / rate), testing::run_in_chipmunk(rods_of(model), kLevel, 1.0, 1.0 / rate));
    CHECK(now < 0.4 * before);
    before = now;
  }
  CHECK(before < 0.002);
}

TEST_CASE("let go: the comparison sees a coarse step, another mass and another pin", "[reference]") {
  const Model model = unlike_sections();
  const TwoTurns end = exact(model, 1.0);
  CHECK(apart(testing::run_in_chipmunk(rods_of(model), kLevel, 1.0, 1.0 / 60.0), end) > 0.05);
  CHECK(apart(in_side_world(model, 1.0, 1.0 / 30.0), end) > 0.01);
  Model heavier = model;
  heavier.masses[1].mass *= 1.05;
  CHECK(apart(in_side_world(heavier, 1.0, 1.0 / 960.0), end) > 0.002);
  TwoRods shifted = rods_of(model);
  shifted.hinge.x += 0.01;
  CHECK(apart(testing::run_in_chipmunk(shifted, kLevel, 1.0, 1.0 / 7680.0), end) > 0.004);
}
