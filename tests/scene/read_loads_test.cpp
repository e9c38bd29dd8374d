// What the settings for loads and hauling become in the scene.
#include <catch2/catch.hpp>

#include <numbers>
#include <string>

#include "sim/scene/reader.h"
#include "tests/support/full_scene.h"

using namespace stowpath;
using stowpath::testing::full_scene;
using stowpath::testing::plain_scene;
using stowpath::testing::replaced;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
// Units are read by one multiplication: a few units in the last place of numbers below 10.
constexpr double kRounding = 1e-14;

Scene full() { return parse_scene(full_scene(), "scene.yaml"); }
Scene plain() { return parse_scene(plain_scene(), "scene.yaml"); }
Scene full_with(const std::string& from, const std::string& to) {
  return parse_scene(replaced(full_scene(), from, to), "scene.yaml");
}

void check_screws(const std::optional<Screws>& screws, int count, double diameter, double thread, bool lag) {
  REQUIRE(screws);
  CHECK(screws->count == count);
  CHECK(screws->diameter == Approx(diameter).margin(kRounding));
  CHECK(screws->thread == Approx(thread).margin(kRounding));
  CHECK(screws->lag == lag);
  CHECK(screws->species == "SPF");
}

}  // namespace

TEST_CASE("loads: who climbs, frictions, ratings and the dynamic factor are read", "[scene]") {
  const Scene scene = full_with("friction: {hook: [0.15, 0.5], hinge: [0.1, 0.3]", "friction: {hook: [0.2, 0.4]");
  CHECK(scene.climber.mass == Approx(300 * 0.45359237).margin(1e-12));
  CHECK(scene.friction.hook.lo == 0.2);
  CHECK(scene.friction.hook.hi == 0.4);
  CHECK(scene.friction.hinge.hi == 0.3);
  REQUIRE(scene.ratings.size() == 2);
  CHECK(scene.ratings[0].what == "carabiner");
  CHECK(scene.ratings[0].force == Approx(20000.0));
  CHECK(scene.ratings[0].breaking);
  CHECK(scene.ratings[0].factor.value() == 5.0);
  CHECK_FALSE(scene.ratings[1].breaking);
  CHECK_FALSE(scene.ratings[1].factor);
  CHECK(scene.ratings[1].force == Approx(450 * 4.4482216152605));
  CHECK(scene.dynamic_factor == 1.25);
}

TEST_CASE("loads: what a scene leaves out is what the table says", "[scene]") {
  const Scene scene = plain(), fresh;
  CHECK(scene.climber.mass == Approx(fresh.climber.mass).epsilon(1e-8));  // written there to a milligram
  CHECK(scene.friction.hook.lo == fresh.friction.hook.lo);
  CHECK(scene.friction.floor.hi == fresh.friction.floor.hi);
  CHECK(scene.dynamic_factor == fresh.dynamic_factor);
  CHECK(scene.ratings.empty());
  CHECK(scene.stair.weighed.empty());
  CHECK(scene.stair.side_rails.moisture == Approx(0.12).margin(kRounding));
  CHECK_FALSE(scene.rail.brackets.screws);
}

TEST_CASE("loads: screws are read where they hold brackets, hinges, hooks and the ceiling point", "[scene]") {
  const Scene scene = full();
  check_screws(scene.rail.brackets.screws, 2, 0.008, 0.060, true);
  check_screws(scene.stair.hinges[0].screws, 4, 0.005, 0.030, false);
  check_screws(scene.stair.hooks.screws, 3, 0.008, 0.035, true);
  check_screws(scene.hoist->eye, 1, 0.010, 0.060, true);
  CHECK(scene.hoist->eye_members == 2);
}

TEST_CASE("loads: a section that was not weighed keeps its computed mass", "[scene]") {
  const auto weighed = full().stair.weighed;
  REQUIRE(weighed.size() == 2);
  CHECK(weighed[0].value() == 20.0);
  CHECK_FALSE(weighed[1]);
}

TEST_CASE("loads: treads and scabs take a size as side rails do", "[scene]") {
  const Scene treads = full_with("{lumber: 2x6, rise:", "{size: [32, 200], rise:");
  CHECK(treads.stair.treads->thickness == Approx(0.032).margin(kRounding));
  CHECK(treads.stair.treads->depth == Approx(0.200).margin(kRounding));
  CHECK(treads.stair.treads->lumber.empty());
  const Scene scabs = full_with("{scab: 2x6,", "{size: [25, 120],");
  CHECK(scabs.stair.locks[0].thickness == Approx(0.025).margin(kRounding));
  CHECK(scabs.stair.locks[0].width == Approx(0.120).margin(kRounding));
}

TEST_CASE("rail: a list of joints mixes bare stations with entries of their own size", "[scene]") {
  const Rail rail = full_with("joints: {at: [3750], diameter: 41.4, length: 50}",
                              "joints: [2000, {at: 3750, diameter: 33.4, length: 80}]")
                        .rail;
  REQUIRE(rail.joints.size() == 2);
  CHECK(rail.joints[0].station == Approx(2.0).margin(kRounding));
  CHECK(rail.joints[0].diameter == Approx(0.0414).margin(kRounding));  // 8 mm more than the pipe
  CHECK(rail.joints[1].station == Approx(3.75).margin(kRounding));
  CHECK(rail.joints[1].diameter == Approx(0.0334).margin(kRounding));
  CHECK(rail.joints[1].length == Approx(0.080).margin(kRounding));
}

TEST_CASE("hoist: the line's way to the hand, its friction, tail and knot are read", "[scene]") {
  const HoistLine line = full_with("lead: {out: 60, up: 1200, station: 6900}\n    friction: geometric",
                                   "leads: [{out: 60, up: 4000, station: 4000}, {out: 60, up: 1200, station: 6900}]\n"
                                   "    friction: additive")
                             .hoist->line;
  REQUIRE(line.leads.size() == 2);
  CHECK(line.leads.front().at.y == Approx(4.0).margin(kRounding));
  CHECK(line.leads[1].station == Approx(6.9).margin(kRounding));
  CHECK(line.friction == SheaveFriction::additive);
  CHECK(line.tail == Approx(1.0).margin(kRounding));
  CHECK(line.knot == "bowline");
  CHECK(full().hoist->line.leads.size() == 1);
  CHECK(full_with("friction: geometric", "friction: ideal").hoist->line.friction == SheaveFriction::ideal);
}

TEST_CASE("hoist: spreader, own limit of pull, cleat and worm are read", "[scene]") {
  const Hoist hoist = full_with("efficiency: 0.7", "worm: {lead angle: 4}").hoist.value();
  CHECK(hoist.spreader->drop == Approx(0.25).margin(kRounding));
  CHECK(hoist.spreader->mass == 1.2);
  CHECK(hoist.hand_limit.value() == 200.0);
  CHECK(hoist.cleat);
  CHECK(hoist.winch->worm_lead.value() == Approx(4 * kDegree).margin(kRounding));
  CHECK(hoist.winch->worm_friction == 0.1);
  CHECK(hoist.winch->drum_length.value() == Approx(0.12).margin(kRounding));
  CHECK_FALSE(hoist.winch->torque);
  CHECK(full_with("crank winch: {", "powered winch: {torque: 12 Nm, stall: 2 kN, ").hoist->winch->torque.value() == 12.0);
}

TEST_CASE("hoist: eyes, overload, stall and the fold line's strength are read", "[scene]") {
  const Scene scene = full();
  CHECK(scene.hoist->eye_kind == EyeKind::shoulder);
  CHECK(scene.hoist->eye_axis == EyeAxis::plumb);
  CHECK(scene.hoist->pick_kind == EyeKind::swivel);
  CHECK(scene.hoist->overload.value() == 600.0);
  CHECK(scene.fold_line->strength.value() == 8000.0);
  CHECK(full_with("axis: plumb", "axis: along the rail").hoist->eye_axis == EyeAxis::along_rail);
  CHECK(full_with("crank winch: {", "powered winch: {stall: 2 kN, ").hoist->winch->stall.value() == 2000.0);
}

TEST_CASE("framing: what brackets and ceiling point hang from is read, and what is not said stays so", "[scene]") {
  const Scene scene = full();
  REQUIRE(scene.ceiling_framing);
  CHECK(scene.ceiling_framing->member == "truss");
  CHECK(scene.ceiling_framing->every.value() == Approx(0.6).margin(kRounding));
  CHECK(scene.ceiling_framing->direction == FramingDirection::out);
  CHECK(scene.ceiling_framing->first.value() == Approx(0.4).margin(kRounding));
  CHECK(scene.loft.framing->first.value() == Approx(0.5).margin(kRounding));
  const Scene less = full_with("joist: 2x10, every: 400, species: SPF, direction: out, first: 500", "joist: 2x10");
  CHECK_FALSE(less.loft.framing->every);
  CHECK_FALSE(less.loft.framing->first);
  CHECK_FALSE(plain().ceiling_framing);
}
