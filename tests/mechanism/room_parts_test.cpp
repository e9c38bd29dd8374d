#include "sim/mechanism/room_parts.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>

#include "sim/geometry/distance.h"
#include "sim/mechanism/bracket_parts.h"
#include "sim/mechanism/room_line.h"
#include "sim/mechanism/rope_parts.h"
#include "sim/mechanism/rope_slabs.h"
#include "tests/support/sample_scene.h"
#include "tests/support/scene_fault.h"

using namespace stowpath;
using stowpath::testing::fault_of;
using stowpath::testing::sample_scene;

namespace {

constexpr double kTolerance = 5e-5;  // [m]

std::vector<RoomPart> named(const std::vector<RoomPart>& parts, const std::string& name) {
  std::vector<RoomPart> out;
  std::copy_if(parts.begin(), parts.end(), std::back_inserter(out), [&](const RoomPart& p) { return p.name == name; });
  return out;
}

Obstacle round_post() { return {"post", {{1.0, 0.0}, {1.2, 0.0}, {1.2, 2.0}, {1.0, 2.0}}, 0.0, {3.0, 3.2}, 0.2}; }

// Whether (out, station) lies in one of the boxes.
bool holds(const std::vector<RoomPart>& parts, double out, double station) {
  return std::any_of(parts.begin(), parts.end(), [&](const RoomPart& part) {
    return contains(part.stations, station) && part.outline.core[0].x <= out && out <= part.outline.core[2].x;
  });
}

Interval extent(const RoundedPolygon& outline, double Vec2::*axis) {
  Interval out{outline.core[0].*axis, outline.core[0].*axis};
  for (const Vec2 corner : outline.core) out = hull(out, {corner.*axis, corner.*axis});
  return {out.lo - outline.radius, out.hi + outline.radius};
}

bool inside(const std::vector<RoomPart>& parts, Vec2 p) {
  return std::any_of(parts.begin(), parts.end(), [&](const RoomPart& part) {
    return signed_distance(Outline(make_disc(p, 0.0)), Outline(part.outline)) <= 1e-12;
  });
}

double distance_to_segment(Vec2 p, Vec2 a, Vec2 b) {
  const double u = std::clamp(dot(p - a, b - a) / norm_squared(b - a), 0.0, 1.0);
  return norm(p - lerp(a, b, u));
}

}  // namespace

TEST_CASE("room: the guard stands on the deck but for its openings", "[mechanism]") {
  Scene scene = sample_scene();
  CHECK(named(room_parts(scene, kTolerance), "guard").empty());
  scene.loft.guard = LoftGuard{1.07, 0.04, 0.9, {{2.0, 2.7}, {5.0, 5.7}}};
  const std::vector<RoomPart> guard = named(room_parts(scene, kTolerance), "guard");
  REQUIRE(guard.size() == 1);
  CHECK(guard[0].outline.core[0] == Vec2{0.9 - 0.04, 2.950});
  CHECK(guard[0].stations == IntervalSet{{0.3, 2.0}, {2.7, 5.0}, {5.7, 7.3}});
}

TEST_CASE("room: the nine brackets are one entry a piece, hung from the pipe's centre", "[mechanism]") {
  const std::vector<RoomPart> parts = bracket_parts(sample_scene(), kTolerance);
  REQUIRE(parts.size() == 4);  // saddle, arm down, arm back, plate
  for (const RoomPart& part : parts) CHECK(part.stations.size() == 9);
  CHECK(parts[0].outline.core[3].y == Approx(2.900 - 0.0167).margin(1e-15));  // the saddle's top touches the pipe
  const RoundedPolygon& down = parts[1].outline;
  CHECK(extent(down, &Vec2::y).hi == Approx(2.900 - 0.0167 - 0.005).margin(1e-15));  // starts under the saddle
  CHECK(parts[2].outline.core[0].y == Approx(2.900 - 0.055).margin(1e-15));
  CHECK(parts[3].outline.core[0].x == Approx(0.900).margin(1e-15));  // the plate lies on the mounting face
}

TEST_CASE("room: an outlined bracket is placed at the pipe, and refused where it is not convex", "[mechanism]") {
  Scene scene = sample_scene();
  scene.rail.brackets.shape = BracketShape::outline;
  scene.rail.brackets.pieces = {{"lug", {{-0.05, -0.03}, {0.0, -0.03}, {0.0, -0.02}}, 0.001, 0.008}};
  const std::vector<RoomPart> parts = bracket_parts(scene, kTolerance);
  REQUIRE(parts.size() == 1);
  CHECK(parts[0].name == "bracket lug");
  CHECK(norm(parts[0].outline.core[1] - Vec2{0.975, 2.870}) < 1e-15);
  CHECK(parts[0].stations[0].length() == Approx(0.008).margin(1e-15));
  std::reverse(scene.rail.brackets.pieces[0].corners.begin(), scene.rail.brackets.pieces[0].corners.end());
  CHECK(fault_of([&] { bracket_parts(scene, kTolerance); }).key == "rail.brackets.parts[0]");
}

TEST_CASE("room: only joints that stand proud of the pipe are parts", "[mechanism]") {
  Scene scene = sample_scene();
  CHECK(named(room_parts(scene, kTolerance), "pipe joint").size() == 1);
  scene.rail.joints[0].diameter = scene.rail.pipe.diameter;
  CHECK(named(room_parts(scene, kTolerance), "pipe joint").empty());
}

TEST_CASE("room: stops are collars at the rail's ends", "[mechanism]") {
  Scene scene = sample_scene();
  scene.rail.stops.right = false;
  const std::vector<RoomPart> stops = named(room_parts(scene, kTolerance), "rail stop");
  REQUIRE(stops.size() == 1);
  CHECK(stops[0].stations == IntervalSet{{0.2, 0.2 + 0.02}});
}

TEST_CASE("room: a wall-saddle's rod is cut off square under the saddle and mitred at a sharp elbow", "[mechanism]") {
  for (const double arm : {0.012, 0.022}) {
    Scene scene = sample_scene();
    scene.rail.brackets.arm = arm;
    const std::vector<RoomPart> rods = named(bracket_parts(scene, kTolerance), "bracket arm");
    const double radius = 0.5 * arm, top = 2.900 - 0.0167 - 0.005;
    for (const double side : {-radius, radius}) CHECK(inside(rods, {0.975 + side, top}));
    CHECK_FALSE(inside(rods, {0.975, top + 1e-6}));
    CHECK(inside(rods, {0.975 + radius, 2.900 - 0.055 - radius}));  // the mitre's outer corner
    CHECK_FALSE(inside(rods, {0.975 + radius + 1e-6, 2.900 - 0.055}));
  }
}

TEST_CASE("room: a bent rod is square under the saddle too, and goes straight over into its bend", "[mechanism]") {
  Scene scene = sample_scene();
  scene.rail.brackets.bend = 0.010;
  const std::vector<RoomPart> rods = named(bracket_parts(scene, kTolerance), "bracket arm");
  const double top = 2.900 - 0.0167 - 0.005, bend_top = 2.900 - 0.055 + 0.016;
  for (const double side : {-0.006, 0.006})
    for (const double up : {top, bend_top}) CHECK(inside(rods, {0.975 + side, up}));
  CHECK_FALSE(inside(rods, {0.975 + 0.006, 2.900 - 0.055 - 0.006}));
}

TEST_CASE("room: floor, walls and ceiling begin at the room's faces and go on for 200 m", "[mechanism]") {
  Scene scene = sample_scene();
  scene.floor.level = -0.2;
  const std::vector<RoomPart> parts = room_parts(scene, kTolerance);
  const auto outline = [&](const char* name) { return named(parts, name)[0].outline; };
  CHECK(extent(outline("floor"), &Vec2::y) == Interval{-200.2, -0.2});
  CHECK(extent(outline("ceiling"), &Vec2::y) == Interval{4.1, 204.1});
  CHECK(extent(outline("back wall"), &Vec2::x) == Interval{-200.0, 0.0});
  CHECK(extent(outline("front wall"), &Vec2::x) == Interval{4.6, 204.6});
  CHECK(named(parts, "left wall")[0].stations[0] == Interval{-200.0, 0.0});
  CHECK(named(parts, "right wall")[0].stations[0] == Interval{7.6, 207.6});
  for (const char* side : {"left wall", "right wall"}) {
    CHECK(extent(outline(side), &Vec2::x) == Interval{-200.0, 204.6});
    CHECK(extent(outline(side), &Vec2::y) == Interval{-200.2, 204.1});
  }
}

TEST_CASE("room: things are numbered in a row, and pieces of one thing share their number", "[mechanism]") {
  Scene scene = sample_scene();
  scene.obstacles.push_back(round_post());
  int last = -1;
  for (const RoomPart& part : room_parts(scene, kTolerance)) {
    CHECK((part.thing == last || part.thing == last + 1));
    last = part.thing;
  }
  const std::vector<RoomPart> arms = named(room_parts(scene, kTolerance), "bracket arm");
  REQUIRE(arms.size() == 2);
  CHECK(arms[0].thing == arms[1].thing);
}

TEST_CASE("room: a round post's slabs hold the post and stand out of it by no more than they say", "[mechanism]") {
  const std::vector<RoomPart> slabs = round_post_parts(round_post());
  std::mt19937 random(29);
  std::uniform_real_distribution<double> offset(-0.11, 0.11);
  double excess = 0.0;
  for (const RoomPart& part : slabs) excess = std::max(excess, part.excess);
  int inside = 0;
  for (int n = 0; n < 100'000; ++n) {
    const Vec2 p{offset(random), offset(random)};
    const bool held = holds(slabs, 1.1 + p.x, 3.1 + p.y);
    if (norm(p) <= 0.1) CHECK(held);
    if (held) CHECK(norm(p) <= 0.1 + excess);
    inside += held ? 1 : 0;
  }
  CHECK(inside > 30'000);  // both answers are drawn: the post fills 65 % of the square
  CHECK(inside < 80'000);
  CHECK(excess < 0.02);
}

TEST_CASE("room: the led-off line's slabs hold the rope, and each is as short as a slab may be", "[mechanism]") {
  const Scene scene = sample_scene();
  const RoomPoint a = *scene.hoist->ceiling_point, b = scene.hoist->line.leads.front();
  const std::vector<RoomPart> slabs = rope_slabs(led_off_runs(scene).front(), 0.0, 0.0);
  CHECK(slabs.size() == 73);  // the shorter extent, 2.9 m along the rail, in 40 mm slabs
  std::mt19937 random(31);
  std::uniform_real_distribution<double> unit(-1.0, 1.0);
  for (int n = 0; n < 20'000; ++n) {
    // A point of the rope: within its radius of its axis.
    const double u = 0.5 + 0.5 * unit(random), r = 0.004 * 0.57;  // 0.57 sqrt(3) < 1
    const Vec2 p = lerp(a.at, b.at, u) + Vec2{r * unit(random), r * unit(random)};
    const double s = a.station + u * (b.station - a.station) + r * unit(random);
    CHECK(std::any_of(slabs.begin(), slabs.end(), [&](const RoomPart& slab) {
      return slab.stations[0].contains(s) &&
             distance_to_segment(p, slab.outline.core[0], slab.outline.core[1]) <= slab.outline.radius;
    }));
  }
  for (const RoomPart& slab : slabs) {
    CHECK(slab.aslant);
    CHECK(slab.stations[0].length() <= 0.040 + 2.0 * 0.004 + 1e-12);
  }
}

TEST_CASE("room: what is left of a rope beyond its ends is measured along the rope", "[mechanism]") {
  // 3-4-12: 13 m of rope, of which a metre is taken off one end and two off the other.
  const RoomRope rope{"rope", {{1.0, 1.0}, 2.0}, {{4.0, 5.0}, 14.0}, 0.004};
  const std::vector<RoomPart> slabs = rope_slabs(rope, 1.0, 2.0);
  CHECK(slabs.front().outline.core[0].x == Approx(1.0 + 3.0 / 13.0).margin(1e-12));
  CHECK(slabs.front().stations[0].lo == Approx(2.0 + 12.0 / 13.0 - 0.004).margin(1e-12));
  CHECK(slabs.back().outline.core[1].y == Approx(5.0 - 2.0 * 4.0 / 13.0).margin(1e-12));
  CHECK(slabs.back().stations[0].hi == Approx(14.0 - 2.0 * 12.0 / 13.0 + 0.004).margin(1e-12));
  CHECK(rope_slabs(rope, 7.0, 6.0).empty());
}

TEST_CASE("room: the line is led from the ceiling point over every lead to the hand", "[mechanism]") {
  Scene scene = sample_scene();
  const std::vector<RoomRope> runs = led_off_runs(scene);
  REQUIRE(runs.size() == 2);
  CHECK(runs[0].name == "line to the lead");
  CHECK(runs[1].name == "line to the hand");
  scene.hoist->line.leads.push_back({{0.5, 3.0}, 6.0});
  REQUIRE(led_off_runs(scene).size() == 3);
  CHECK(led_off_runs(scene)[1].name == "line to lead 2");
  CHECK(led_off_runs(scene)[2].b.at == Vec2{0.5, scene.floor.level + 1.2});
  scene.hoist->line.leads.clear();
  REQUIRE(led_off_runs(scene).size() == 1);
  CHECK(led_off_runs(scene)[0].b.at == Vec2{scene.hoist->ceiling_point->at.x, scene.floor.level + 1.2});
  scene.hoist->line.hand = RoomPoint{{3.0, 1.0}, 5.0};
  CHECK(led_off_runs(scene)[0].b.station == 5.0);
}

TEST_CASE("room: a line led off in the plane of the ceiling point needs one slab", "[mechanism]") {
  Scene scene = sample_scene();
  scene.hoist->line.leads.front().station = scene.hoist->ceiling_point->station;
  CHECK(rope_slabs(led_off_runs(scene).front(), 0.0, 0.0).size() == 1);
}

TEST_CASE("room: while it is not hooked on the line hangs plumb, down to where it is said to", "[mechanism]") {
  const Scene scene = sample_scene();
  const std::vector<RoomRope> free = hanging_line(scene, 2.1);
  REQUIRE(free.size() == 1);
  CHECK(free[0].when == LineState::hooked_off);
  CHECK(free[0].b.at == Vec2{scene.hoist->ceiling_point->at.x, 2.1});
  CHECK(free[0].b.station == free[0].a.station);
}

TEST_CASE("room: a rolling hoist carries its ceiling point along and may not lead its line off", "[mechanism]") {
  Scene scene = sample_scene();
  scene.hoist->rolls = true;
  CHECK(fault_of([&] { led_off_runs(scene); }).problem == "a hoist that rolls cannot lead its line to a fixed point");
  scene.hoist->line.leads.clear();
  CHECK(led_off_runs(scene).empty());
  scene.hoist->ceiling_point->station = 4.1;  // 100 mm to the right of home
  const RopeRun line = rope_runs(scene, 2.1).front();
  CHECK(line.a.rolls);
  CHECK(line.a.stations.lo == Approx(0.1).margin(1e-15));
}

TEST_CASE("room: two picks without a bar are two lines; the fold line runs from point to point", "[mechanism]") {
  const std::vector<RopeRun> runs = rope_runs(sample_scene(), 2.1);
  REQUIRE(runs.size() == 4);
  CHECK(runs[0].name == "hoist line");
  CHECK(runs[0].when == LineState::hooked_on);
  CHECK(runs[0].last_aside == -0.260);
  CHECK(runs[1].last_aside == 0.260);
  CHECK(runs[2].a.section == 0);
  CHECK(runs[2].b.section == 1);
  CHECK(runs[3].a.at == runs[2].b.at);
  CHECK(runs[3].b.at == runs[2].a.at);
}

TEST_CASE("room: a spreader hangs on the line, and its legs on it", "[mechanism]") {
  Scene scene = sample_scene();
  scene.hoist->spreader = Spreader{0.6, 0.25, 1.0, 0.04};
  scene.fold_line.reset();
  const std::vector<RopeRun> runs = rope_runs(scene, 2.1);
  REQUIRE(runs.size() == 4);
  CHECK(runs[1].name == "spreader bar");
  CHECK(runs[1].half_width == 0.3);
  CHECK(runs[1].radius == 0.02);
  // With the pick plumb below the ceiling point the bar's middle is 250 mm over the pick.
  CHECK(norm(spot_at({2.0, 4.0}, {2.0, 2.0}, runs[1].first) - Vec2{2.0, 2.25}) < 1e-15);
  CHECK(runs[2].first_aside == -0.3);
  CHECK(runs[2].last_aside == -0.26);
  CHECK(runs[3].last_aside == 0.26);
}

TEST_CASE("room: a rope at a section that does not exist is refused", "[mechanism]") {
  Scene scene = sample_scene();
  scene.hoist->pick.section = 3;
  CHECK(fault_of([&] { rope_runs(scene, 2.1); }).key == "hoist.pick.section");
}

TEST_CASE("room: zones keep their states, and a dented one is refused", "[mechanism]") {
  Scene scene = sample_scene();
  const std::vector<ZonePart> zones = zone_parts(scene);
  REQUIRE(zones.size() == 1);
  CHECK(zones[0].when == std::vector<ZoneState>{ZoneState::parked});
  scene.zones[0].outline.push_back({1.7, 0.9});
  CHECK(fault_of([&] { zone_parts(scene); }).key == "keep clear[0]");
}
