#include "sim/mechanism/hook_parts.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "sim/mechanism/hook_shape.h"
#include "sim/mechanism/standing.h"
#include "tests/support/random_outlines.h"
#include "tests/support/sample_scene.h"
#include "tests/support/scene_fault.h"
#include "tests/support/true_band.h"

using namespace stowpath;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kTolerance = 5e-5;  // [m]

std::vector<StairPart> hooks(double wrap_degrees, double tip) {
  Scene scene = testing::sample_scene();
  scene.stair.hooks.wrap = wrap_degrees * kDegree;
  scene.stair.hooks.tip = tip;
  std::vector<StairPart> stair;
  add_hooks(scene, kTolerance, stair);
  return stair;
}

bool holds(const std::vector<Vec2>& polygon, Vec2 p, double slack) {
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], edge = polygon[(i + 1) % polygon.size()] - a;
    if (cross(edge, p - a) < -slack * norm(edge)) return false;
  }
  return true;
}

std::vector<StairPart> parts_of(const Hooks& hooks) {
  Scene scene = testing::sample_scene();
  scene.stair.hooks = hooks;
  std::vector<StairPart> stair;
  add_hooks(scene, kTolerance, stair);
  return stair;
}

Hooks sample_hooks() { return testing::sample_scene().stair.hooks; }

// A rod's true shape, worked out here by hand: bend, jog, shank, tip and point.
struct TrueRod {
  std::vector<ArcBand> bands;
  std::vector<RoundedPolygon> straights;

  double off(Vec2 p) const {
    double least = 1.0;
    for (const ArcBand& band : bands) least = std::min(least, testing::off_band(band, p));
    for (const RoundedPolygon& straight : straights) least = std::min(least, testing::off_outline(straight, p));
    return least;
  }
};

// 12 mm rod, 20 mm inside, 200 degrees, shank 20 mm off the tangent, 10 mm of tip and a point.
TrueRod jogged_rod() {
  const double r = 0.018, s = std::sqrt(0.5), between = 0.020 - 2 * r * (1 - s), wrap = 200 * kDegree;
  const Vec2 left{0.0, 0.026 + r}, turned = left + r * Vec2{s, -s}, straight = turned + between * Vec2{1.0, 1.0};
  const Vec2 right = straight + r * Vec2{s, -s}, half = 0.006 * Vec2{-s, s};
  TrueRod rod;
  rod.bands = {{{}, 0.020, 0.032, 90 * kDegree, wrap},
               {left, 0.012, 0.024, -90 * kDegree, 45 * kDegree},
               {right, 0.012, 0.024, 90 * kDegree, 45 * kDegree}};
  rod.straights = {make_rounded_polygon({turned - half, straight - half, straight + half, turned + half}, 0.0),
                   make_box({right.x, 0.040}, {right.x + 0.150, 0.052})};
  const Vec2 out{-std::sin(wrap), std::cos(wrap)}, on{-std::cos(wrap), -std::sin(wrap)};
  rod.straights.push_back(make_rounded_polygon(
      {0.020 * out, 0.032 * out, 0.032 * out + 0.010 * on, 0.026 * out + 0.022 * on, 0.020 * out + 0.010 * on}, 0.0));
  return rod;
}

Hooks jogged_hooks() {
  Hooks hooks = sample_hooks();
  hooks.shank_offset = 0.020;
  hooks.tip = 0.010;
  hooks.end = HookEnd::pointed;
  return hooks;
}

Hooks plate_hooks() {
  Hooks hooks = sample_hooks();
  hooks.form = HookForm::plate;
  hooks.rod = hooks.shank = 0.0;
  hooks.rim = 0.014;
  hooks.thickness = 0.008;
  hooks.pieces = {{"shank", {{0.0, 0.022}, {0.150, 0.022}, {0.150, 0.060}, {0.0, 0.060}}, 0.0},
                  {"curl", {{0.0, -0.034}, {0.030, -0.034}, {0.030, -0.020}, {0.0, -0.020}}, 0.002}};
  return hooks;
}

const StairPart* part_with(const std::vector<StairPart>& stair, Vec2 p) {
  for (const StairPart& part : stair)
    if (holds(part.outline.core, p, 1e-12)) return &part;
  return nullptr;
}

}  // namespace

TEST_CASE("hooks: the bend covers the whole true bar, and names crown and curl by its angle", "[mechanism]") {
  const std::vector<StairPart> stair = hooks(200, 0.0);
  std::mt19937 random(23);
  std::uniform_real_distribution<double> radius(0.020, 0.032), psi(0.0, 200 * kDegree);
  for (int n = 0; n < 10'000; ++n) {
    const double at = psi(random);
    const StairPart* part = part_with(stair, on_bend(radius(random), at));
    REQUIRE(part != nullptr);
    if (std::abs(at - 135 * kDegree) > 0.1) CHECK(part->name == (at > 135 * kDegree ? "hook curl" : "hook crown"));
  }
}

TEST_CASE("hooks: the bend stands out of the true bar by no more than the tolerance", "[mechanism]") {
  for (const StairPart& part : hooks(200, 0.0)) {
    if (part.name == "hook shank") continue;
    for (const Vec2 corner : part.outline.core) CHECK(norm(corner) <= 0.032 + kTolerance);
    for (std::size_t i = 0; i < part.outline.core.size(); ++i) {
      const Vec2 chord = lerp(part.outline.core[i], part.outline.core[(i + 1) % part.outline.core.size()], 0.5);
      CHECK(norm(chord) >= 0.020 - kTolerance);
    }
  }
}

TEST_CASE("hooks: in the working pose the crown lies over the pivot and the curl on its wall side", "[mechanism]") {
  const double lean = 30 * kDegree;
  const Linkage linkage{{0.975, 2.9}, 1, {3.0, 0.0, 0.0}, {}, {}};
  const Pose2 X_W = place_sections(linkage, {0.0, lean, {}})[0];
  const Vec2 crown = X_W * on_bend(0.026, 90 * kDegree) - linkage.pivot;
  CHECK(crown.y == Approx(0.026 * std::cos(lean)).margin(1e-15));  // the crown looks up the stair
  CHECK(crown.x == Approx(-0.026 * std::sin(lean)).margin(1e-15));
  const Vec2 curl = X_W * on_bend(0.026, 180 * kDegree) - linkage.pivot;
  CHECK(curl.x < -0.02);
  const Vec2 shank = X_W * on_bend(0.026, 0.0) - linkage.pivot;
  CHECK(shank.x > 0.02);  // towards the climber
}

TEST_CASE("hooks: the shank continues the bend on the climber's side towards the foot", "[mechanism]") {
  const StairPart shank = hooks(200, 0.0).front();
  REQUIRE(shank.name == "hook shank");
  CHECK(shank.outline.core[0] == Vec2{0.0, 0.020});
  CHECK(shank.outline.core[2] == Vec2{0.150, 0.032});
  REQUIRE(shank.stations.size() == 2);
  CHECK(shank.stations[1].lo == Approx(0.255).margin(1e-15));
  CHECK(shank.stations[1].hi == Approx(0.267).margin(1e-15));
}

TEST_CASE("hooks: the tip goes on along the bend's tangent", "[mechanism]") {
  const std::vector<StairPart> stair = hooks(180, 0.025);
  const StairPart& tip = stair.back();
  CHECK(tip.name == "hook curl");
  // At 180 degrees the bar looks back towards the foot: the tip runs along +x, at across -32 to -20.
  for (const Vec2 corner : tip.outline.core) {
    CHECK(corner.x > -1e-15);
    CHECK(corner.x < 0.025 + 1e-15);
    CHECK(corner.y < -0.020 + 1e-15);
    CHECK(corner.y > -0.032 - 1e-15);
  }
  CHECK(part_with(stair, {0.024, -0.026}) == &tip);
}

TEST_CASE("hooks: every point of a jogged and pointed rod lies in a part", "[mechanism]") {
  const TrueRod rod = jogged_rod();
  const std::vector<StairPart> stair = parts_of(jogged_hooks());
  std::mt19937 random(7);
  int within = 0;
  for (int n = 0; n < 40'000; ++n) {
    const Vec2 p{testing::uniform(random, -0.04, 0.24), testing::uniform(random, -0.04, 0.06)};
    if (rod.off(p) > 0.0) continue;
    ++within;
    CHECK(part_with(stair, p) != nullptr);
  }
  CHECK(within > 5'000);
}

TEST_CASE("hooks: no part stands out of a jogged and pointed rod by more than the tolerance", "[mechanism]") {
  const TrueRod rod = jogged_rod();
  double worst = 0.0;
  for (const StairPart& part : parts_of(jogged_hooks()))
    for (const Vec2 p : testing::rim_points(part.outline)) worst = std::max(worst, rod.off(p));
  CHECK(worst <= kTolerance);
  CHECK(worst > 0.5 * kTolerance);  // the outer corners of the wedges
}

TEST_CASE("hooks: a small offset is one bend against another, and the shank begins where it has come level",
          "[mechanism]") {
  // Two bends of 18 mm turn by a, where 36 mm (1 - cos a) is the offset of 6 mm.
  const ShankJog jog = shank_jog(0.006, 0.012);
  CHECK(jog.turn == Approx(std::acos(5.0 / 6.0)));
  CHECK(jog.straight == 0.0);
  CHECK(jog.along == Approx(0.036 * std::sqrt(11.0) / 6.0));
  CHECK(shank_jog(0.0, 0.012).along == 0.0);
}

TEST_CASE("hooks: a plate's rim and parts are as thick along the rail as it is, and named as hook", "[mechanism]") {
  const std::vector<StairPart> stair = parts_of(plate_hooks());
  for (const StairPart& part : stair) {
    CHECK(part.kind == PartKind::hook);
    REQUIRE(part.stations.size() == 2);
    CHECK(part.stations[0].length() == Approx(0.008).margin(1e-15));
  }
  CHECK(part_with(stair, on_bend(0.027, 100 * kDegree))->name == "hook crown");
  CHECK(stair.back().name == "hook curl");
  CHECK(stair.back().outline.radius == 0.002);
  REQUIRE(part_with(stair, {0.1, 0.04}) != nullptr);
  CHECK(part_with(stair, {0.1, 0.04})->name == "hook shank");
}

TEST_CASE("hooks: a plate's part that is not convex is refused at its key", "[mechanism]") {
  Scene scene = testing::sample_scene();
  scene.stair.hooks = plate_hooks();
  std::reverse(scene.stair.hooks.pieces[1].corners.begin(), scene.stair.hooks.pieces[1].corners.end());
  std::vector<StairPart> stair;
  CHECK(testing::fault_of([&] { add_hooks(scene, kTolerance, stair); }).key == "stair.hooks.parts[1]");
}

TEST_CASE("hooks: a roller's tread touches the hook's circle, and takes its diameter along the rail", "[mechanism]") {
  Hooks hooks = sample_hooks();
  hooks.roller = HookRoller{0.030, 0.010, 120 * kDegree};
  const StairPart roller = parts_of(hooks).back();
  REQUIRE(roller.name == "hook roller");
  CHECK(roller.stations[1] == Interval{0.261 - 0.015, 0.261 + 0.015});
  const Vec2 outward = on_bend(1.0, 120 * kDegree);
  double nearest = 1.0, farthest = 0.0;
  for (const Vec2 corner : roller.outline.core) {
    nearest = std::min(nearest, dot(corner, outward));
    farthest = std::max(farthest, dot(corner, outward));
    CHECK(std::abs(cross(corner, outward)) == Approx(0.005));
  }
  CHECK(nearest == Approx(0.020));
  CHECK(farthest == Approx(0.050));
  CHECK(testing::off_outline(roller.outline, {}) == Approx(0.020));  // a pipe in the circle touches it and no more
}

TEST_CASE("hooks: the widest of rod, plate and roller keeps them between the rail's ends", "[mechanism]") {
  Scene scene = testing::sample_scene();
  const Interval rod = station_span(scene);
  scene.stair.hooks.roller = HookRoller{0.030, 0.010, 90 * kDegree};
  CHECK(station_span(scene).lo - rod.lo == Approx(0.5 * (0.030 - 0.012)));
  CHECK(rod.hi - station_span(scene).hi == Approx(0.5 * (0.030 - 0.012)));
  scene.stair.hooks = plate_hooks();
  CHECK(station_span(scene).lo - rod.lo == Approx(0.5 * (0.008 - 0.012)));
}
