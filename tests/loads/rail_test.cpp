#include "sim/loads/rail.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

#include "sim/trade/pipe.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

HookForces hang(double force, Interval stations) { return {"a test", {0.0, -force}, {0.5, 0.5}, stations}; }

// Two brackets far apart and one hook: a simple span, whose closed form is known.
Scene simple_span(double span) {
  Scene scene = testing::sample_scene();
  scene.rail.stations = {0.0, span};
  scene.rail.brackets.stations = {0.0, span};
  scene.rail.joints.clear();
  scene.stair.hooks.stations = {0.0};
  return scene;
}

}  // namespace

TEST_CASE("rail: one hook on a simple span bends the pipe as the closed form says", "[loads]") {
  const double span = 1.8, force = 900.0;
  const Scene scene = simple_span(span);
  const RailCase rail = rail_under(scene, {"a test", {0.0, -force}, {1.0}, {0.1, span - 0.1}});
  const Section section = tube_section(scene.rail.pipe.diameter, scene.rail.pipe.wall);
  const double weight = steel_tube_mass(scene.rail.pipe.diameter, scene.rail.pipe.wall) * 9.80665;
  const double moment = force * span / 4 + weight * span * span / 8;
  CHECK(rail.stress == Approx(moment / section.modulus).epsilon(1e-9));  // refined to half the digits, flat top squared
  CHECK(rail.peaks.sagging.position == Approx(span / 2).margin(1e-6));
  const double stiffness = kSteelElasticity * section.second_moment;
  const double sag = force * std::pow(span, 3) / (48 * stiffness) + 5 * weight * std::pow(span, 4) / (384 * stiffness);
  CHECK(rail.peaks.down.value == Approx(sag).epsilon(1e-9));
  CHECK(rail.hinged_stress == Approx(rail.design_stress).epsilon(1e-4));  // it is hinged at both brackets anyway
  CHECK(rail.design_stress > rail.stress);
}

TEST_CASE("rail: the series holds nothing greater than the peaks, and comes near them", "[loads]") {
  const Scene scene = testing::sample_scene();
  const RailCase rail = rail_under(scene, hang(1500.0, {0.55, 7.0}), 2000);
  double stress = 0.0, sag = 0.0;
  for (const RailPlace& place : rail.places) {
    stress = std::max(stress, place.stress);
    sag = std::max(sag, place.most_sag);
    REQUIRE(place.sag.size() == 2);
    CHECK(std::max(place.sag[0], place.sag[1]) <= place.most_sag * (1 + 1e-9));
  }
  CHECK(stress <= rail.stress * (1 + 1e-12));
  CHECK(stress == Approx(rail.stress).epsilon(1e-3));  // 2000 places over eight spans: a flat top seen from 2 mm off
  CHECK(sag == Approx(rail.peaks.down.value).epsilon(1e-3));
  CHECK(rail.hinged_stress > rail.design_stress);
}

TEST_CASE("rail: a force outward bends the round pipe as much as one downward", "[loads]") {
  const Scene scene = testing::sample_scene();
  const RailCase down = rail_under(scene, hang(800.0, {1.0, 6.0}), 10);
  HookForces outward = hang(800.0, {1.0, 6.0});
  outward.total = {480.0, -640.0};
  CHECK(rail_under(scene, outward, 10).stress == Approx(down.stress).epsilon(1e-12));
}

TEST_CASE("rail: bracket screws hold what turns the plate about its lower edge", "[loads]") {
  Scene scene = testing::sample_scene();
  scene.rail.brackets.screws = Screws{4, 0.008, 0.050, true, "SPF"};
  const RailCase rail = rail_under(scene, hang(1500.0, {0.55, 7.0}), 10);
  const BracketLoad load = worst_bracket(scene, rail);
  const double turning = -load.force.y * scene.rail.brackets.projection;
  CHECK(load.force.x == 0.0);
  CHECK(2 * load.pull * 0.75 * scene.rail.brackets.plate_height == Approx(turning));
  CHECK(4 * load.shear == Approx(-load.force.y));
  CHECK(-load.force.y > 0.5 * 1500.0);  // no less than one hook straight over a bracket
  CHECK(-load.force.y < 1500.0 + 100.0);
  CHECK(load.bending == Approx(-load.force.y * 0.069));  // projection less the plate's thickness
}

TEST_CASE("rail: an outlined bracket is measured by the pieces that touch its wall", "[loads]") {
  Scene scene = testing::sample_scene();
  const RailCase rail = rail_under(scene, hang(1500.0, {0.55, 7.0}), 10);
  scene.rail.brackets.screws = Screws{4, 0.008, 0.050, true, "SPF"};
  const BracketLoad saddle = worst_bracket(scene, rail);
  scene.rail.brackets.shape = BracketShape::outline;
  scene.rail.brackets.pieces = {
      {"plate", {{-0.075, -0.100}, {-0.069, -0.100}, {-0.069, -0.010}, {-0.075, -0.010}}, 0.0, 0.06},
      {"arm", {{0.0, -0.055}, {-0.069, -0.055}}, 0.006, 0.012}};
  CHECK(worst_bracket(scene, rail).pull == Approx(saddle.pull));
}

TEST_CASE("rail: the pipe's strength is its grade's yield over the stated factor", "[loads]") {
  const PipeStrength strength = pipe_strength(testing::sample_scene().rail.pipe);
  CHECK(strength.allowable == Approx(find_pipe_grade("A")->yield / kSteelFactor));
  CHECK(strength.design.modulus < strength.listed.modulus);
}

TEST_CASE("rail: what cannot be reckoned is refused", "[loads]") {
  Scene scene = testing::sample_scene();
  CHECK_THROWS_AS(rail_under(scene, {"a test", {0, -1}, {1.0}, {1, 2}}), std::invalid_argument);
  CHECK_THROWS_AS(rail_under(scene, hang(1.0, {2.0, 1.0})), std::invalid_argument);
  scene.rail.brackets.stations.resize(1);
  CHECK_THROWS_AS(rail_under(scene, hang(1.0, {1.0, 2.0})), std::invalid_argument);
}
