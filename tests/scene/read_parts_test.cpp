// What the settings' alternatives and defaults become in the scene.
#include <catch2/catch.hpp>

#include <numbers>
#include <string>

#include "sim/scene/reader.h"
#include "sim/scene/scene_error.h"
#include "tests/support/full_scene.h"

using namespace stowpath;
using stowpath::testing::full_scene;
using stowpath::testing::plain_scene;
using stowpath::testing::replaced;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
// Units are read by one multiplication: a few units in the last place of numbers below 10.
constexpr double kRounding = 1e-14;

Scene plain_with(const std::string& from, const std::string& to) {
  return parse_scene(replaced(plain_scene(), from, to), "scene.yaml");
}
Scene full_with(const std::string& from, const std::string& to) {
  return parse_scene(replaced(full_scene(), from, to), "scene.yaml");
}
Scene plain_and(const std::string& more) { return parse_scene(std::string(plain_scene()) + more, "scene.yaml"); }

constexpr const char* kPipe = "  pipe: NPS 1\n";

// Three sections, and a procedure of one fold.
Scene three_sections(const std::string& fold) {
  const std::string text = replaced(plain_scene(), "  sections: [2400]\n",
                                    "  sections: [1000, 800, 600]\n"
                                    "  hinges: [{face: back, offset: 12}, {face: front, offset: 10, limit: 90}]\n");
  return parse_scene(replaced(text, "along: 2400", "along: 600") + "procedure:\n  - fold: " + fold + "\n",
                     "scene.yaml");
}

}  // namespace

TEST_CASE("rail: stops are given by their ends, or by their sizes as well", "[scene]") {
  const RailStops both = parse_scene(plain_scene(), "scene.yaml").rail.stops;
  CHECK((both.left && both.right));
  CHECK(both.diameter == Approx(1.315 * 0.0254 + 0.020).margin(kRounding));  // the judgement told in the reference
  const RailStops left = plain_with(kPipe, std::string(kPipe) + "  stops: left\n").rail.stops;
  CHECK((left.left && !left.right));
  const RailStops none = plain_with(kPipe, std::string(kPipe) + "  stops: none\n").rail.stops;
  CHECK((!none.left && !none.right));
  const RailStops wide = plain_with(kPipe, std::string(kPipe) + "  stops: {ends: right, width: 35}\n").rail.stops;
  CHECK((!wide.left && wide.right));
  CHECK(wide.width == Approx(0.035).margin(kRounding));
}

TEST_CASE("rail: a joint as thick as the pipe is flush", "[scene]") {
  const Rail rail =
      plain_with(kPipe, "  pipe: {diameter: 33.4, wall: 3.4, steel: b}\n  joints: {at: [2000], diameter: 33.4}\n").rail;
  REQUIRE(rail.joints.size() == 1);
  CHECK(rail.joints[0].diameter == rail.pipe.diameter);
  CHECK(rail.pipe.name.empty());
  CHECK(rail.pipe.steel == "B");
}

TEST_CASE("rail: brackets repeat as far as a whole one fits on the pipe", "[scene]") {
  // 300 + 5 * 800 = 4300; the saddle of the next, at 5100, would need a pipe to 5120, and this one ends at 4900.
  CHECK(parse_scene(plain_scene(), "scene.yaml").rail.brackets.stations.size() == 6);
  CHECK(plain_with("[100, 4900]", "[100, 4320]").rail.brackets.stations.size() == 6);
  CHECK(plain_with("[100, 4900]", "[100, 4319]").rail.brackets.stations.size() == 5);
}

TEST_CASE("rail: a bracket may be drawn by the outlines of its parts", "[scene]") {
  const std::string saddle =
      "first: 300, every: 800, projection: 75, drop: 55, arm: 12, saddle: [40, 5], plate: [60, 90, 6]";
  const Brackets brackets =
      plain_with(saddle,
                 "at: [300, 2000], shape: outline, parts: [{name: arm, outline: [[-75, -40], [0, -40]], "
                 "radius: 6, width: 12}, {name: plate, outline: [[-75, -90], [-75, 10], [-69, 10], "
                 "[-69, -90]], width: 60}]")
          .rail.brackets;
  CHECK(brackets.shape == BracketShape::outline);
  REQUIRE(brackets.pieces.size() == 2);
  CHECK(brackets.pieces[0].corners.size() == 2);
  CHECK(brackets.pieces[0].radius == Approx(0.006).margin(kRounding));
  CHECK(brackets.pieces[1].corners.size() == 4);
  CHECK(brackets.pieces[1].width == Approx(0.06).margin(kRounding));
}

TEST_CASE("stair: side rails, treads and handrails take their alternatives", "[scene]") {
  const Stair stair = plain_with("{lumber: 2x6, front face: 70}",
                                 "{size: [40, 140], front face: 70, species: Douglas Fir-Larch, foot: level}\n"
                                 "  treads: {lumber: 5/4x6, rise: 230, overhang: 15}\n"
                                 "  handrails: {height: 850, diameter: 34, sides: left}")
                          .stair;
  CHECK(stair.side_rails.lumber.empty());
  CHECK(stair.side_rails.width == Approx(0.14).margin(kRounding));
  CHECK(stair.side_rails.species == "DF-L");
  CHECK(stair.side_rails.level_foot);
  REQUIRE(stair.treads);
  CHECK(stair.treads->rise.value() == Approx(0.23).margin(kRounding));
  CHECK_FALSE(stair.treads->first);
  CHECK(stair.treads->thickness == Approx(0.0254).margin(kRounding));  // dressed 5/4, PS 20
  REQUIRE(stair.handrails);
  CHECK(stair.handrails->sides == Sides::left);
  CHECK(stair.handrails->post_every == Approx(1.2).margin(kRounding));
}

TEST_CASE("stair: what a plain scene leaves out has its default", "[scene]") {
  const Scene scene = parse_scene(plain_scene(), "scene.yaml");
  CHECK(scene.name == "scene.yaml");
  CHECK(scene.margin.hook == Approx(0.003).margin(kRounding));
  CHECK(scene.tolerance == Approx(0.003).margin(kRounding));
  CHECK(scene.stair.above_pivot == 0.0);
  CHECK(scene.stair.hinges.empty());
  CHECK(scene.stair.locks.empty());
  CHECK_FALSE(scene.stair.treads);
  CHECK_FALSE(scene.hoist);
  CHECK_FALSE(scene.fold_line);
  CHECK(scene.procedure.empty());
}

TEST_CASE("loft: a guard stands at the edge unless it is put elsewhere", "[scene]") {
  const Scene scene = plain_with("stations: [200, 4800]}", "stations: [200, 4800], guard: {}}");
  REQUIRE(scene.loft.guard);
  CHECK(scene.loft.guard->out == scene.loft.edge);
  CHECK(scene.loft.guard->height == Approx(1.07).margin(kRounding));
}

TEST_CASE("obstacles: posts reach from floor to ceiling unless told otherwise", "[scene]") {
  const Scene scene = plain_and(
      "obstacles:\n  - {name: round, post: {out: 1800, station: 600, diameter: 90}}\n"
      "  - {name: square, post: {out: 1800, station: 900, size: [90, 140]}, up: [100, 500]}\n");
  REQUIRE(scene.obstacles.size() == 2);
  const Obstacle &round = scene.obstacles[0], &square = scene.obstacles[1];
  CHECK(round.round_post.value() == Approx(0.09).margin(kRounding));
  CHECK(round.outline[2].y == scene.room.ceiling);
  CHECK(round.stations.length() == Approx(0.09).margin(kRounding));
  CHECK_FALSE(square.round_post);
  CHECK(square.outline[0].x == Approx(1.755).margin(kRounding));
  CHECK(square.outline[0].y == Approx(0.1).margin(kRounding));
  CHECK(square.stations.lo == Approx(0.83).margin(kRounding));
}

TEST_CASE("keep clear: zones name one state, several, or are always", "[scene]") {
  const std::string box = "box: {out: [0, 1], up: [0, 1]}, stations: [0, 1]}\n";
  const Scene scene = plain_and("keep clear:\n  - {name: a, " + box + "  - {name: b, when: moving, " + box +
                                "  - {name: c, when: [parked, standing], " + box);
  REQUIRE(scene.zones.size() == 3);
  CHECK(scene.zones[0].when == std::vector{ZoneState::always});
  CHECK(scene.zones[1].when == std::vector{ZoneState::moving});
  CHECK(scene.zones[2].when == std::vector{ZoneState::parked, ZoneState::standing});
}

TEST_CASE("hoist: winches by hand and by power, and a hoist that rolls", "[scene]") {
  const Hoist crank = parse_scene(full_scene(), "scene.yaml").hoist.value();
  CHECK(crank.pulled_by == PulledBy::crank_winch);
  CHECK(crank.winch.value().ratio == 5.0);
  CHECK(crank.winch->crank.value() == Approx(0.25).margin(kRounding));
  const Hoist powered =
      full_with("crank winch: {drum: 60, ratio: 5, crank: 250, efficiency: 0.7, speed: 30, drum length: 120}",
                "powered winch: {drum: 60, speed: 300}")
          .hoist.value();
  CHECK(powered.pulled_by == PulledBy::powered_winch);
  CHECK(powered.winch.value().ratio == 1.0);
  CHECK_FALSE(powered.winch->crank);
  CHECK(full_with("rolls: no", "rolls: yes").hoist->rolls);
}

TEST_CASE("procedure: a fold names its hinge where there are two", "[scene]") {
  const auto both = three_sections("[170, 80]").procedure.front().folds;
  REQUIRE(both.size() == 2);
  CHECK(both[1].value() == Approx(80 * kDegree).margin(kRounding));
  const auto second = three_sections("{hinge: 2, to: 80}").procedure.front().folds;
  REQUIRE(second.size() == 2);
  CHECK_FALSE(second[0]);
  CHECK(second[1].value() == Approx(80 * kDegree).margin(kRounding));
  CHECK_THROWS_AS(three_sections("80"), SceneError);
  CHECK_THROWS_AS(three_sections("[170, 95]"), SceneError);
}

TEST_CASE("procedure: each kind of move is read with its targets", "[scene]") {
  const auto steps = parse_scene(full_scene(), "scene.yaml").procedure;
  const std::vector<StepKind> kinds{StepKind::roll, StepKind::hook_on, StepKind::unpin,    StepKind::drag,
                                    StepKind::hang, StepKind::fold,    StepKind::together, StepKind::lift,
                                    StepKind::pin,  StepKind::hook_off};
  REQUIRE(steps.size() == kinds.size());
  for (std::size_t i = 0; i < kinds.size(); ++i) CHECK(steps[i].kind == kinds[i]);
  CHECK(steps[6].station.value() == Approx(4.0).margin(kRounding));
  CHECK(steps[6].lean.value() == Approx(86 * kDegree).margin(kRounding));
  CHECK(steps[6].folds.front().value() == Approx(176 * kDegree).margin(kRounding));
  CHECK(steps[7].at.line == steps[6].at.line + 1);
  const Step drag = full_with("drag: {lean: 40}", "drag: 40").procedure[3];
  CHECK(drag.lean.value() == Approx(40 * kDegree).margin(kRounding));
}
