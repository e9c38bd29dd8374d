#include "sim/scene/reader.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <sstream>

#include "sim/scene/scene_error.h"
#include "tests/support/full_scene.h"

using namespace stowpath;
using Catch::Matchers::StartsWith;
using stowpath::testing::full_scene;
using stowpath::testing::plain_scene;
using stowpath::testing::replaced;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
// Units are read by one multiplication: a few units in the last place of numbers below 10.
constexpr double kRounding = 1e-14;

// The skeleton of the scene file as the design gives it.
constexpr std::string_view kSkeleton = R"(stowpath: 1
name: Wheel loft over the truing benches
units: mm                                  # how bare numbers read; on the command line a unit is always written
margin: {default: 12, hook: 3, self: 3}
room: {length: 7600, depth: 4600, ceiling: 4100}
loft: {edge: 900, deck: 2950, thickness: 240, stations: [300, 7300]}
rail:
  pipe: NPS 1                              # or {diameter: 33.4, wall: 3.4, steel: A}
  at: {out: 975, up: 2900}                 # the pipe's centre
  stations: [200, 7300]
  stops: both ends
  joints: [3750]                           # pipe couplings: {diameter, length} or none
  brackets: {first: 300, every: 860, shape: wall-saddle, projection: 75, drop: 55, arm: 12, saddle: [40, 5], plate: [60, 90, 6]}
stair:
  width: 560                               # over the side rails
  side rails: {lumber: 2x6, species: SPF, front face: 70}   # across, from the datum line to the climber's face
  sections: [1790, 1440]                   # along, pivot to hinge, hinge to foot
  above pivot: 60
  hinges: [{face: back, offset: 12, limit: 178}]
  locks: [{scab: 2x6, length: 900, spacer: 38, pin: 10}]
  treads: {lumber: 2x6, rise: equal, overhang: 0}           # or rise: 246, first: 246
  hooks: {stations: [-261, 261], rod: 12, inside: 20, shank: 150, wrap: 200, tip: 0}
  casters: {diameter: 75, width: 32, along: 1440, across: 0, stations: [-310, 310], plate: 8}
  handrails: none
  extras: [{name: gate hinge, section: 1, outline: [[1760, -80], [1820, -80], [1820, -70], [1760, -70]], stations: [-280, -240], mass: 0.6 kg}]
obstacles:
  - {name: strip light, box: {out: [2350, 2470], up: [2980, 3080]}, stations: [900, 5400]}
  - {name: truing bench, box: {out: [0, 620], up: [0, 900]}, stations: [300, 2300]}
  - {name: sloped brace, outline: [[0, 2100], [500, 2600], [500, 2640], [0, 2140]], stations: [3000, 3040]}
floor: {level: 0, uneven: 5}               # ± under any caster
keep clear:
  - {name: photo wall, when: parked, box: {out: [0, 3400], up: [0, 2500]}, stations: [2500, 5200]}
hoist:
  ceiling point: {out: 2550, up: 4080, station: 4000}
  home: 4000
  rolls: no
  pick: {section: 1, along: 1700, across: 0, spread: 520}
  line: {parts: 4, sheaves: plain, diameter: 8, strength: 8 kN, lead: {out: 60, up: 1200, station: 6900}}
  pulled by: hand                          # or {crank winch: ...}, {powered winch: ...}
fold line: {from: {section: 1, along: 200, across: -60}, through: [{section: 2, along: 1300, across: -60}, {section: 1, along: 200, across: -60}], diameter: 8}
procedure:
  - roll: home
  - hook on: hoist
  - unpin: 1
  - drag: {lean: 40}
  - hang: {lean: 70}
  - fold: 176
  - lift: 88
tolerances: {default: 3}
)";

std::string faults_of(std::string_view text) {
  try {
    parse_scene(text, "attic.yaml");
    return "";
  } catch (const SceneError& error) {
    std::string all;
    for (const Diagnostic& d : error.diagnostics) all += format_diagnostic(d, error.file, text, false) + "\n";
    return all;
  }
}

}  // namespace

TEST_CASE("reader: the design's skeleton is a valid scene", "[scene]") { CHECK(faults_of(kSkeleton) == ""); }

TEST_CASE("reader: the full scene and the plain scene are valid", "[scene]") {
  CHECK(faults_of(full_scene()) == "");
  CHECK(faults_of(plain_scene()) == "");
}

TEST_CASE("reader: the skeleton's site is read in metres", "[scene]") {
  const Scene scene = parse_scene(kSkeleton, "attic.yaml");
  CHECK(scene.file == "attic.yaml");
  CHECK(scene.name == "Wheel loft over the truing benches");
  CHECK(scene.units == FileUnits::millimetres);
  CHECK(scene.margin.standard == Approx(0.012).margin(kRounding));
  CHECK(scene.room.length == Approx(7.6).margin(kRounding));
  CHECK(scene.loft.deck == Approx(2.95).margin(kRounding));
  CHECK(scene.loft.stations.hi == Approx(7.3).margin(kRounding));
  CHECK_FALSE(scene.loft.guard);
  CHECK(scene.floor.uneven == Approx(0.005).margin(kRounding));
  REQUIRE(scene.obstacles.size() == 3);
  CHECK(scene.obstacles[0].outline.size() == 4);
  CHECK(scene.obstacles[2].stations.lo == Approx(3.0).margin(kRounding));
  REQUIRE(scene.zones.size() == 1);
  CHECK(scene.zones[0].when == std::vector{ZoneState::parked});
}

TEST_CASE("reader: the skeleton's rail gets its pipe, stops, joints and brackets", "[scene]") {
  const Rail rail = parse_scene(kSkeleton, "attic.yaml").rail;
  // NPS 1, schedule 40: 1.315 in outside, 0.133 in wall (ASME B36.10M).
  CHECK(rail.pipe.diameter == Approx(1.315 * 0.0254).margin(kRounding));
  CHECK(rail.pipe.wall == Approx(0.133 * 0.0254).margin(kRounding));
  CHECK(rail.stops.left);
  CHECK(rail.stops.right);
  REQUIRE(rail.joints.size() == 1);
  CHECK(rail.joints[0].station == Approx(3.75).margin(kRounding));
  CHECK(rail.joints[0].diameter == Approx(rail.pipe.diameter + 0.008).margin(kRounding));
  REQUIRE(rail.brackets.stations.size() == 9);  // 300 + 8 * 860 = 7180; the next would pass the end at 7300
  CHECK(rail.brackets.stations.back() == Approx(7.18).margin(kRounding));
  CHECK(rail.brackets.plate_height == Approx(0.09).margin(kRounding));
}

TEST_CASE("reader: the skeleton's stair is read with dressed lumber and radians", "[scene]") {
  const Stair stair = parse_scene(kSkeleton, "attic.yaml").stair;
  CHECK(stair.side_rails.thickness == Approx(1.5 * 0.0254).margin(kRounding));  // a dressed 2x6, PS 20
  CHECK(stair.side_rails.width == Approx(5.5 * 0.0254).margin(kRounding));
  CHECK(stair.sections.size() == 2);
  REQUIRE(stair.hinges.size() == 1);
  CHECK(stair.hinges[0].limit == Approx(178 * kDegree).margin(kRounding));
  CHECK(stair.hooks.seat_range == Approx(30 * kDegree).margin(kRounding));
  CHECK(stair.casters.mass == Approx(0.6).margin(kRounding));
  REQUIRE(stair.treads);
  CHECK_FALSE(stair.treads->rise);
  CHECK_FALSE(stair.handrails);
  REQUIRE(stair.extras.size() == 1);
  CHECK(stair.extras[0].mass == Approx(0.6).margin(kRounding));
}

TEST_CASE("reader: the skeleton's hoist, fold line and procedure are read", "[scene]") {
  const Scene scene = parse_scene(kSkeleton, "attic.yaml");
  REQUIRE(scene.hoist);
  CHECK_FALSE(scene.hoist->rolls);
  CHECK(scene.hoist->line.strength.value() == Approx(8000).margin(1e-9));
  REQUIRE(scene.hoist->line.leads.size() == 1);
  CHECK(scene.hoist->line.leads.front().station == Approx(6.9).margin(kRounding));
  CHECK(scene.hoist->pulled_by == PulledBy::hand);
  REQUIRE(scene.fold_line);
  CHECK(scene.fold_line->through.size() == 2);
  REQUIRE(scene.procedure.size() == 7);
  CHECK(scene.procedure[0].to_home);
  CHECK(scene.procedure[0].station.value() == Approx(4.0).margin(kRounding));
  CHECK(scene.procedure[2].hinge == 1);
  CHECK(scene.procedure[3].lean.value() == Approx(40 * kDegree).margin(kRounding));
  CHECK(scene.procedure[5].folds[0].value() == Approx(176 * kDegree).margin(kRounding));
  CHECK(scene.procedure[6].kind == StepKind::lift);
}

TEST_CASE("reader: a fault says file, line, column, key and problem", "[scene]") {
  CHECK_THROWS_WITH(parse_scene("room:\n  ceiling: high\n", "attic.yaml"),
                    StartsWith("attic.yaml:2:12: error: room.ceiling: "));
}

TEST_CASE("reader: every key and list entry has its place", "[scene]") {
  const Scene scene = parse_scene(kSkeleton, "attic.yaml");
  CHECK(scene.where.at("room.depth").line == 5);
  CHECK(scene.where.at("room.depth").column == 29);
  CHECK(scene.where.at("obstacles[1]").line == 28);
  CHECK(scene.where.at("obstacles[1].box.up[1]").line == 28);
  CHECK(scene.where.at("procedure[3].drag.lean").line == 45);
  CHECK(place_of(scene, "stair.hooks.seat range").line == scene.where.at("stair.hooks").line);
}

TEST_CASE("reader: all faults of a file are told in one pass, what is missing last", "[scene]") {
  const std::string text =
      replaced(replaced(replaced(full_scene(), "depth: 4600", "depht: 4600"), "wrap: 200", "wrap: 900"),
               "sheaves: plain", "sheaves: [ball]");
  try {
    parse_scene(text, "attic.yaml");
    FAIL("nothing was thrown");
  } catch (const SceneError& error) {
    REQUIRE(error.diagnostics.size() == 4);
    CHECK(error.diagnostics[0].key == "room.depht");
    CHECK(error.diagnostics[0].hint == "did you mean depth?");
    CHECK(error.diagnostics[1].key == "stair.hooks.wrap");
    CHECK(error.diagnostics[2].key == "hoist.line.sheaves");
    CHECK(error.diagnostics[3].key == "room.depth");
  }
}

TEST_CASE("reader: Windows line ends change nothing", "[scene]") {
  std::string crlf;
  for (const char c : full_scene()) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const Scene scene = parse_scene(crlf, "attic.yaml"), plain = parse_scene(full_scene(), "attic.yaml");
  CHECK(scene.where.at("hoist.home").line == plain.where.at("hoist.home").line);
  CHECK(scene.where.at("hoist.home").column == plain.where.at("hoist.home").column);
  CHECK(scene.name == plain.name);
}

TEST_CASE("reader: a file in inches reads bare numbers as inches and takes defaults in inches", "[scene]") {
  const std::string text = R"(stowpath: 1
units: in
room: {length: 20 ft, depth: 13ft, ceiling: 9' 10-1/2"}
loft: {edge: 36, deck: 7ft 6in, thickness: 8, stations: [6, 234]}
rail:
  pipe: NPS 1-1/4
  at: {out: 38 1/2, up: 88}
  stations: [3, 237]
  brackets: {at: [12, 48, 96, 228], projection: 3, drop: 2 1/4, arm: 1/2, saddle: [1 1/2, 1/4], plate: [2, 4, 1/4]}
stair:
  width: 22
  side rails: {size: [1 1/2, 5 1/2], front face: 2 3/4}
  sections: [96]
  hooks: {stations: [-10, 10], rod: 1/2, inside: 1, shank: 6, wrap: 170}
  casters: {diameter: 3, width: 1 1/4, along: 96, stations: [-9, 9]}
)";
  REQUIRE(faults_of(text) == "");
  const Scene scene = parse_scene(text, "attic.yaml");
  CHECK(scene.room.ceiling == Approx(118.5 * 0.0254).margin(kRounding));
  CHECK(scene.margin.standard == Approx(0.0127).margin(kRounding));
  CHECK(scene.rail.brackets.stations.size() == 4);
  CHECK(scene.stair.width == Approx(22 * 0.0254).margin(kRounding));
}
