#include "sim/geometry/union_outline.h"

#include <catch2/catch.hpp>
#include <random>

#include "sim/geometry/union_area.h"

using namespace stowpath;

namespace {

std::vector<Vec2> box(double x0, double y0, double x1, double y1) { return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}; }

double signed_area(const std::vector<Vec2>& ring) {
  double twice = 0.0;
  for (std::size_t i = 0; i < ring.size(); ++i) twice += cross(ring[i], ring[(i + 1) % ring.size()]);
  return 0.5 * twice;
}

// Green: rings about holes run the other way and count against it.
double enclosed(const std::vector<std::vector<Vec2>>& rings) {
  double area = 0.0;
  for (const std::vector<Vec2>& ring : rings) area += signed_area(ring);
  return area;
}

}  // namespace

TEST_CASE("union outline: two boxes crossed have one border of twelve corners", "[geometry]") {
  const auto rings = union_outline({box(-3, -1, 3, 1), box(-1, -3, 1, 3)});
  REQUIRE(rings.size() == 1);
  CHECK(rings[0].size() == 12);
  CHECK(signed_area(rings[0]) == Approx(12.0 + 12.0 - 4.0).epsilon(1e-6));
}

TEST_CASE("union outline: four bars about a hole leave a ring inside that runs the other way", "[geometry]") {
  const auto rings = union_outline({box(0, 0, 5, 1), box(0, 4, 5, 5), box(0, 0, 1, 5), box(4, 0, 5, 5)});
  REQUIRE(rings.size() == 2);
  CHECK(enclosed(rings) == Approx(25.0 - 9.0).epsilon(1e-6));
  CHECK(std::min(signed_area(rings[0]), signed_area(rings[1])) == Approx(-9.0).epsilon(1e-6));
}

TEST_CASE("union outline: apart, inside one another and twice over", "[geometry]") {
  CHECK(union_outline({box(0, 0, 1, 1), box(2, 0, 3, 1)}).size() == 2);
  CHECK(union_outline({box(0, 0, 4, 4), box(1, 1, 2, 2)}).size() == 1);
  CHECK(union_outline({box(0, 0, 1, 1), box(0, 0, 1, 1)}).size() == 1);
  CHECK(union_outline({}).empty());
}

TEST_CASE("union outline: it encloses what strips count, for heaps of random hulls", "[geometry]") {
  std::mt19937 random(20);
  std::uniform_real_distribution<double> place(0.0, 3.0), offset(-0.8, 0.8);
  for (int trial = 0; trial < 40; ++trial) {
    std::vector<std::vector<Vec2>> polygons;
    for (int k = 0; k < 12; ++k) {
      const Vec2 centre{place(random), place(random)};
      std::vector<Vec2> points;
      for (int i = 0; i < 7; ++i) points.push_back(centre + Vec2{offset(random), offset(random)});
      polygons.push_back(convex_hull(points));
    }
    // A thousand strips are good to a part in ten thousand where polygons are not thin; these may be.
    CHECK(enclosed(union_outline(polygons)) == Approx(union_moments(polygons).area).epsilon(1e-3));
  }
}

TEST_CASE("convex hull: corners only, counter-clockwise", "[geometry]") {
  const std::vector<Vec2> hull = convex_hull({{0, 0}, {1, 0}, {2, 0}, {2, 2}, {1, 1}, {0, 2}, {0, 1}, {0, 0}});
  CHECK(hull.size() == 4);
  CHECK(signed_area(hull) == Approx(4.0));
  CHECK(convex_hull({{0, 0}, {1, 1}, {2, 2}}).size() == 2);
}
