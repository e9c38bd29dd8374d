#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <random>
#include <string>
#include <vector>

#include "sim/geometry/rounded_polygon.h"
#include "sim/scene/reader.h"
#include "sim/scene/scene_error.h"
#include "tests/support/full_scene.h"

using namespace stowpath;

namespace {

std::string scene_with(const std::string& outline) {
  return std::string(stowpath::testing::plain_scene()) +
         "obstacles:\n  - {name: thing, stations: [0, 40], outline: " + outline + "}\n";
}

std::vector<Vec2> outline_of(const std::string& outline) {
  return parse_scene(scene_with(outline), "scene.yaml").obstacles.front().outline;
}

std::string text_of(const std::vector<Vec2>& corners) {
  std::string text = "[";
  for (const Vec2 p : corners) {
    text += (text.size() > 1 ? ", [" : "[") + std::to_string(p.x) + ", " + std::to_string(p.y) + "]";
  }
  return text + "]";
}

double area(const std::vector<Vec2>& corners) {
  double sum = 0.0;
  for (std::size_t i = 0; i < corners.size(); ++i) sum += cross(corners[i], corners[(i + 1) % corners.size()]);
  return sum / 2;
}

// Corners on a circle of 1000 mm at random angles, in order: convex [mm].
std::vector<Vec2> random_convex(std::mt19937& random) {
  const int corners = std::uniform_int_distribution<int>(3, 20)(random);
  std::vector<Vec2> outline;
  for (int i = 0; i < corners; ++i) {
    const double share = std::uniform_real_distribution<double>(0.0, 0.8)(random);
    const double angle = 2 * std::numbers::pi * (i + share) / corners;
    outline.push_back({2000 + 1000 * std::cos(angle), 2000 + 1000 * std::sin(angle)});
  }
  return outline;
}

}  // namespace

TEST_CASE("outline: corners may go either way round and are kept counter-clockwise", "[scene]") {
  const auto one_way = outline_of("[[0, 0], [500, 0], [500, 300], [0, 300]]");
  const auto other_way = outline_of("[[0, 300], [500, 300], [500, 0], [0, 0]]");
  CHECK(one_way == other_way);
  CHECK(area(one_way) == Approx(0.15).epsilon(1e-12));  // a few roundings
}

TEST_CASE("outline: a corner on a straight edge is left out", "[scene]") {
  CHECK(outline_of("[[0, 0], [250, 0], [500, 0], [500, 300], [0, 300]]").size() == 4);
}

TEST_CASE("outline: one corner or two with a radius are a disc and a bar", "[scene]") {
  CHECK(outline_of("[[100, 200]], radius: 5").size() == 1);
  CHECK(outline_of("[[100, 200], [100, 900]], radius: 5").size() == 2);
}

TEST_CASE("outline: every convex outline is taken, and makes a rounded polygon of the same area", "[scene][random]") {
  std::mt19937 random(17);
  for (int i = 0; i < 300; ++i) {
    std::vector<Vec2> corners = random_convex(random);
    const double square_metres = area(corners) * 1e-6;
    if (i % 2 == 0) std::reverse(corners.begin(), corners.end());
    INFO(text_of(corners));
    const auto read = outline_of(text_of(corners));
    // Corners were printed to a millionth of a millimetre.
    CHECK(area(read) == Approx(square_metres).margin(1e-7));
    CHECK_NOTHROW(make_rounded_polygon(read, 0.0));
  }
}

TEST_CASE("outline: a corner pushed in past its neighbours' line is always refused", "[scene][random]") {
  std::mt19937 random(18);
  int tried = 0;
  for (int i = 0; i < 300; ++i) {
    std::vector<Vec2> corners = random_convex(random);
    if (corners.size() < 4) continue;
    const std::size_t k = std::uniform_int_distribution<std::size_t>(1, corners.size() - 2)(random);
    const Vec2 middle = lerp(corners[k - 1], corners[k + 1], 0.5);
    corners[k] = lerp(corners[k], middle, 1.0) + 0.01 * (middle - corners[k]);
    if (norm(corners[k] - middle) < 0.01) continue;  // about to lie on the line [mm]
    INFO(text_of(corners));
    CHECK_THROWS_AS(outline_of(text_of(corners)), SceneError);
    ++tried;
  }
  CHECK(tried > 200);
}

TEST_CASE("outline: corners out of order are refused, convex as their hull may be", "[scene][random]") {
  std::mt19937 random(19);
  for (int i = 0; i < 300; ++i) {
    std::vector<Vec2> corners = random_convex(random);
    if (corners.size() < 4) continue;
    std::swap(corners[1], corners[2]);
    INFO(text_of(corners));
    CHECK_THROWS_AS(outline_of(text_of(corners)), SceneError);
  }
}
