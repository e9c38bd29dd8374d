#include "sim/geometry/union_area.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace stowpath;

namespace {

std::vector<Vec2> box(double x0, double y0, double x1, double y1) { return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}; }

std::vector<Vec2> disc(double radius, int corners) {
  std::vector<Vec2> out;
  for (int k = 0; k < corners; ++k) {
    const double a = 2.0 * std::numbers::pi * k / corners;
    out.push_back(radius * Vec2{std::cos(a), std::sin(a)});
  }
  return out;
}

}  // namespace

TEST_CASE("union area: overlapping boxes count once", "[geometry]") {
  // An L of two boxes 4 x 1 and 1 x 3 that share a unit square at the origin: 4 + 3 - 1.
  const AreaMoments ell = union_moments({box(0, 0, 4, 1), box(0, 0, 1, 3)});
  CHECK(ell.area == Approx(6.0).epsilon(1e-12));  // 250 strips end where the upright does
  CHECK(ell.centre.x == Approx((4 * 2.0 + 2 * 0.5) / 6).epsilon(1e-12));
  CHECK(ell.centre.y == Approx((4 * 0.5 + 2 * 2.0) / 6).epsilon(1e-12));
  // 4 x 1 and 1 x 2 about their own middles, (a² + b²) / 12 each, and about the whole's.
  const double flat = 4 * (16 + 1) / 12.0 + 4 * norm_squared(Vec2{2.0, 0.5} - ell.centre);
  const double upright = 2 * (1 + 4) / 12.0 + 2 * norm_squared(Vec2{0.5, 2.0} - ell.centre);
  CHECK(ell.polar == Approx(flat + upright).epsilon(1e-12));
}

TEST_CASE("union area: a thing twice over is the thing", "[geometry]") {
  const AreaMoments once = union_moments({disc(1.0, 64)}), twice = union_moments({disc(1.0, 64), disc(1.0, 64)});
  CHECK(twice.area == Approx(once.area).epsilon(1e-14));
  // A regular n-gon: n/2 sin(2 pi/n), its polar moment area (2 + cos(2 pi/n)) / 6.
  const double turn = 2.0 * std::numbers::pi / 64, area = 32 * std::sin(turn);
  CHECK(once.area == Approx(area).epsilon(1e-4));  // strips at the ends, where the edges are steep
  CHECK(once.polar == Approx(area * (2.0 + std::cos(turn)) / 6.0).epsilon(1e-4));
  CHECK(norm(once.centre) < 1e-12);
}

TEST_CASE("union area: pieces apart add up, and nothing has no area", "[geometry]") {
  const AreaMoments pair = union_moments({box(0, 0, 1, 1), box(3, 0, 4, 1)});
  CHECK(pair.area == Approx(2.0));
  CHECK(pair.centre.x == Approx(2.0));
  CHECK(union_moments({}).area == 0.0);
}
