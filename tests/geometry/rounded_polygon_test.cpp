#include "sim/geometry/rounded_polygon.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "sim/geometry/distance.h"
#include "tests/support/random_outlines.h"

namespace stowpath {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

}  // namespace

TEST_CASE("outline: what is not a convex, counter-clockwise core is refused, with the vertex", "[geometry]") {
  CHECK_THROWS_WITH(make_rounded_polygon({}, 0), "outline: it has no vertex");
  CHECK_THROWS_WITH(make_disc({0, 0}, -1), "outline: the radius is negative or not finite");
  CHECK_THROWS_WITH(make_disc({0, 0}, kInfinity), "outline: the radius is negative or not finite");
  CHECK_THROWS_WITH(make_disc({0, std::nan("")}, 1), "outline, vertex 1: not finite");
  CHECK_THROWS_WITH(make_rounded_polygon({{0, 0}, {1, 0}, {1, 0}, {0, 1}}, 0),
                    "outline, vertex 2: repeats the next one");
  CHECK_THROWS_WITH(make_rounded_polygon({{0, 0}, {1e-200, 0}}, 0), "outline, vertex 1: repeats the next one");
  CHECK_THROWS_WITH(make_rounded_polygon({{0, 0}, {1, 0}, {0.1, 0.1}, {0, 1}}, 0),
                    "outline, vertex 3: the outline turns inward there (or runs clockwise)");
  CHECK_THROWS_WITH(make_rounded_polygon({{0, 0}, {0, 1}, {1, 1}}, 0),
                    "outline, vertex 1: the outline turns inward there (or runs clockwise)");
  CHECK_THROWS_WITH(make_rounded_polygon({{0, 0}, {1, 0}, {2, 0}}, 0), "outline: all its vertices lie on one line");
  std::vector<Vec2> star;
  for (int k = 0; k < 5; ++k) star.push_back({std::cos(k * 2.5132741228718345), std::sin(k * 2.5132741228718345)});
  CHECK_THROWS_WITH(make_rounded_polygon(star, 0), "outline: it winds round more than once");
  CHECK_THROWS_WITH(make_rounded_polygon(std::vector<Vec2>(65), 0), "outline, vertex 65: more than 64 vertices");
}

TEST_CASE("outline: vertices on a straight edge are dropped", "[geometry]") {
  const RoundedPolygon box =
      make_rounded_polygon({{1, 0}, {2, 0}, {2, 1}, {2, 2}, {1, 2}, {0.5, 2}, {0, 2}, {0, 0}}, 0.1);
  CHECK(box.core == std::vector<Vec2>{{2, 0}, {2, 2}, {0, 2}, {0, 0}});
  CHECK(box.radius == 0.1);
}

TEST_CASE("outline: a capsule with no length is a disc", "[geometry]") {
  CHECK(make_capsule({1, 2}, {1, 2}, 0.5).core.size() == 1);
  CHECK(make_capsule({1, 2}, {1, 3}, 0.5).core.size() == 2);
}

TEST_CASE("outline: the bounding disc holds the outline, and no outline needs half of it", "[geometry]") {
  std::mt19937 random(1);
  for (int i = 0; i < 10'000; ++i) {
    const RoundedPolygon outline = testing::random_outline(random);
    const BoundingDisc disc = bounding_disc(outline);
    double farthest = 0.0;
    for (const Vec2 v : outline.core) farthest = std::max(farthest, norm(v - disc.centre) + outline.radius);
    REQUIRE(farthest <= disc.radius);
    REQUIRE(farthest > 0.5 * disc.radius - 1e-15);
  }
}

TEST_CASE("outline: placing moves every vertex and keeps the radius", "[geometry]") {
  const RoundedPolygon out = placed(make_capsule({1, 0}, {2, 0}, 0.5), {{10, 20}, 0.0, 1.0});
  CHECK(out.core == std::vector<Vec2>{{10, 21}, {10, 22}});
  CHECK(out.radius == 0.5);
}

TEST_CASE("outline: corners for drawing lie on the true edge, and their chords near it", "[geometry]") {
  std::mt19937 random(2);
  const double tolerance = 1e-4;
  for (int i = 0; i < 1000; ++i) {
    const RoundedPolygon outline = testing::random_outline(random);
    const std::vector<Vec2> corners = drawn_corners(outline, tolerance);
    for (std::size_t k = 0; k < corners.size(); ++k) {
      const auto outside = [&](Vec2 p) { return distance(outline, {}, make_disc(p, 0), {}); };
      REQUIRE(std::abs(outside(corners[k])) <= (outline.radius > tolerance ? 1e-12 : tolerance));
      if (corners.size() < 3) continue;
      const double chord = outside(lerp(corners[k], corners[(k + 1) % corners.size()], 0.5));
      REQUIRE(chord <= 1e-12);  // rounding
      REQUIRE(chord >= -1.001 * tolerance);
    }
  }
}

}  // namespace stowpath
