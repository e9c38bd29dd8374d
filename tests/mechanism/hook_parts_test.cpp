#include "sim/mechanism/hook_parts.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <random>

#include "tests/support/sample_scene.h"

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

const StairPart* part_with(const std::vector<StairPart>& stair, Vec2 p) {
  for (const StairPart& part : stair)
    if (holds(part.outline.core, p, 1e-12)) return &part;
  return nullptr;
}

// Bend angle psi from the shank side, over the crown, to the wall side.
Vec2 on_bend(double radius, double psi) { return radius * Vec2{-std::sin(psi), std::cos(psi)}; }

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
