#include "sim/mechanism/standing.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "sim/mechanism/stair_parts.h"
#include "sim/trade/us_units.h"
#include "tests/support/sample_scene.h"
#include "tests/support/scene_fault.h"

using namespace stowpath;
using stowpath::testing::fault_of;
using stowpath::testing::one_section_scene;
using stowpath::testing::sample_scene;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

Standing stand(const Scene& scene) { return stand(scene, make_linkage(scene)); }

// A bare board whose axle is a point at (along, across), its pivot `height` above the floor.
Scene board(double along, double across, double height) {
  Scene scene = one_section_scene();
  scene.rail.at.y = height;
  scene.rail.pipe.diameter = 2.0 * scene.stair.hooks.inside;  // no slack: the pivot is the pipe's centre
  scene.stair.sections = {along};
  scene.stair.casters.along = along;
  scene.stair.casters.across = across;
  scene.stair.casters.diameter = 0.0;
  return scene;
}

}  // namespace

// A rectangle 70 long and 5 wide about its datum line, its floor 60 below the rail: by hand,
// theta = atan2(2.5, 70) + acos(60 / hypot(70, 2.5)).
TEST_CASE("standing: a rectangle's back corner meets the floor at the lean of its closed form", "[mechanism]") {
  const double lean = stand(board(70.0, -2.5, 60.0)).lean;
  CHECK(lean / kDegree == Approx(33.108823386774).margin(1e-11));  // twelve decimals are stated, and rounding
}

// Common practice, no source: a stair about 14 ft long and cut 29 degrees off square stands near 61 degrees to the
// floor and rises a little over 12 ft (14 ft cos 29 = 12.24 ft).
TEST_CASE("standing: 14 ft cut 29 degrees off square stand at 61 degrees and rise a little over 12 ft", "[mechanism]") {
  const Scene scene = board(14.0 * kFoot, 0.0, 12.2447 * kFoot);
  const Standing standing = stand(scene);
  CHECK(90.0 - standing.lean / kDegree == Approx(61.0).margin(0.01));  // 12.2447 ft is rounded to 0.01 degrees

  std::vector<StairPart> stair;
  add_side_rails(scene, make_linkage(scene), standing.lean, stair);
  const std::vector<Vec2>& foot =
      stair.front().outline.core;  // back and front corner of the foot are the second and third
  const double off_square = std::atan2(foot[2].x - foot[1].x, foot[2].y - foot[1].y);
  CHECK(off_square / kDegree == Approx(29.0).margin(0.01));
}

TEST_CASE("standing: the sample's casters touch the floor", "[mechanism]") {
  const Scene scene = sample_scene();
  const Linkage linkage = make_linkage(scene);
  const Standing standing = stand(scene, linkage);
  const auto X_W = place_sections(linkage, {0.0, standing.lean, {}});
  const Vec2 axle = X_W[1] * Vec2{scene.stair.casters.along, scene.stair.casters.across};
  CHECK(axle.y == Approx(0.5 * scene.stair.casters.diameter).margin(1e-14));  // rounding of sums of 3 m
  CHECK(standing.axle_height == Approx(axle.y).margin(1e-14));
}

TEST_CASE("standing: an uneven floor spreads the lean both ways, a higher floor leaning it more", "[mechanism]") {
  Scene scene = sample_scene();
  const Standing standing = stand(scene);
  CHECK(standing.leans.lo < standing.lean);
  CHECK(standing.lean < standing.leans.hi);
  scene.floor.level = scene.floor.uneven;
  CHECK(stand(scene).lean == Approx(standing.leans.hi).margin(1e-14));
  scene.floor.level = -scene.floor.uneven;
  CHECK(stand(scene).lean == Approx(standing.leans.lo).margin(1e-14));
}

TEST_CASE("standing: a stair too short to stand is told by how much", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.sections[1] = 0.9;
  scene.stair.casters.along = 0.9;
  const Diagnostic fault = fault_of([&] { stand(scene); });
  CHECK(fault.key == "stair.sections");
  CHECK(fault.at.line == 21);
  // Pivot 2.8967 m, axle 0.0375 m: 2.8592 - 2.690 = 169.2 mm; at 30 degrees 2.8592 / cos 30 - 2.690 = 611.5 mm.
  CHECK(fault.problem == "the stair cannot stand: its foot stays 170 mm above the floor");
  CHECK(fault.hint == "make the sections 612 mm longer in all to stand at 30° (170 mm would just touch)");
}

TEST_CASE("standing: lengthening by the hint's number makes the stair stand as the hint says", "[mechanism]") {
  Scene scene = board(2.0, 0.05, 3.0);
  scene.stair.casters.along += (3.0 + 0.05 * std::sin(30 * kDegree)) / std::cos(30 * kDegree) - 2.0;
  CHECK(stand(scene).lean / kDegree == Approx(30.0).margin(1e-10));
}

TEST_CASE("standing: plumb and flat stairs are refused", "[mechanism]") {
  const Diagnostic plumb = fault_of([] { stand(board(2.0001, 0.0, 2.0)); });
  CHECK(plumb.problem == "the stair would stand at 0.6° from plumb, outside 1° to 80°");
  CHECK(plumb.hint == "make the sections 309 mm longer in all to stand at 30°");
  const Diagnostic flat = fault_of([] { stand(board(20.0, 0.0, 2.0)); });
  CHECK(flat.problem == "the stair would stand at 84.3° from plumb, outside 1° to 80°");
  CHECK(flat.hint == "make the sections 17.691 m shorter in all to stand at 30°");
  const Diagnostic buried = fault_of([] { stand(board(2.0, 0.0, -0.25)); });
  CHECK(buried.problem == "the stair cannot stand: its pivot is 250 mm below the casters' axle");
}

TEST_CASE("standing: seated hooks hang the pivot their slack below the pipe's centre", "[mechanism]") {
  const Linkage linkage = make_linkage(sample_scene());
  CHECK(linkage.pivot.x == 0.975);
  CHECK(linkage.pivot.y == Approx(2.900 - (0.020 - 0.0167)).margin(1e-15));
}

TEST_CASE("standing: hinges stand off the face they are on", "[mechanism]") {
  Scene scene = sample_scene();
  CHECK(make_linkage(scene).hinge_across[0] == Approx(-0.070 - 0.012).margin(1e-15));
  CHECK(make_linkage(scene).fold_sign[0] == -1.0);
  scene.stair.hinges[0].face = HingeFace::front;
  CHECK(make_linkage(scene).hinge_across[0] == Approx(0.070 + 0.012).margin(1e-15));
  CHECK(make_linkage(scene).fold_sign[0] == 1.0);
}

TEST_CASE("standing: hooks that do not go over the pipe are refused", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.hooks.inside = 0.015;
  const Diagnostic fault = fault_of([&] { make_linkage(scene); });
  CHECK(fault.key == "stair.hooks.inside");
  CHECK(fault.at.line == 23);
  CHECK(fault.problem == "an inside radius of 15 mm does not go over a pipe of 33 mm diameter");
}

TEST_CASE("standing: sections and hinges must count up", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.sections.push_back(1.0);
  CHECK(fault_of([&] { make_linkage(scene); }).problem == "1 given for 3 sections");
}

// The contact wanders by delta each way about the crown; the centre lies Ri - r from the pipe's, opposite: the chord of
// that arc is 2 (Ri - r) sin(delta / 2).
TEST_CASE("standing: hook play is the chord of the slack over the seat range", "[mechanism]") {
  Scene scene = sample_scene();
  CHECK(hook_play(scene) == Approx(2.0 * 0.0033 * std::sin(15.0 * kDegree)).margin(1e-15));
  scene.stair.hooks.seat_range = 180.0 * kDegree;
  CHECK(hook_play(scene) == Approx(2.0 * 0.0033).margin(1e-15));  // unseated: the whole slack both ways
}

TEST_CASE("standing: the span keeps every hook between the stops", "[mechanism]") {
  Scene scene = sample_scene();
  // Hooks at 261 mm either way, 6 mm half a rod; stops 20 mm wide on a rail from 0.2 to 7.3 m.
  CHECK(station_span(scene).lo == Approx(0.2 + 0.02 + 0.261 + 0.006).margin(1e-15));
  CHECK(station_span(scene).hi == Approx(7.3 - 0.02 - 0.261 - 0.006).margin(2e-15));
  scene.rail.stops.left = false;
  CHECK(station_span(scene).lo == Approx(0.2 + 0.261 + 0.006).margin(1e-15));
}

TEST_CASE("standing: a rail too short for the hooks, and a home off the span, are refused", "[mechanism]") {
  Scene scene = sample_scene();
  scene.hoist->home = 7.2;
  const Diagnostic off = fault_of([&] { station_span(scene); });
  CHECK(off.key == "hoist.home");
  CHECK(off.at.line == 31);
  CHECK(off.problem == "home 7.200 m is out of the stair's reach");
  CHECK(off.hint == "its hooks keep it between stations 487 mm and 7.013 m");
  scene.rail.stations = {0.2, 0.7};
  const Diagnostic narrow = fault_of([&] { station_span(scene); });
  CHECK(narrow.key == "rail.stations");
  CHECK(narrow.problem == "the rail is 74 mm too short for the hooks");  // 40 + 522 + 12 - 500
}

TEST_CASE("standing: home is the ceiling point's station where none is given", "[mechanism]") {
  Scene scene = sample_scene();
  scene.hoist->home.reset();
  scene.hoist->ceiling_point->station = 3.0;
  CHECK(home_station(scene) == 3.0);
  scene.hoist.reset();
  CHECK_FALSE(home_station(scene));
}
