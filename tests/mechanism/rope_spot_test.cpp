// How far a spot on a rope moves, held against random movements of the rope's ends.
#include "sim/mechanism/rope_spot.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "tests/support/random_outlines.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

Vec2 moved_by(std::mt19937& random, Vec2 from, double by) {
  const double way = uniform(random, 0.0, 6.283185307179586);
  return from + by * Vec2{std::cos(way), std::sin(way)};
}

/// How many of the random movements take a spot farther than `scale` times the turning part of its bound says.
int beyond_bound(double scale) {
  std::mt19937 random(77);
  int beyond = 0;
  for (int i = 0; i < 20000; ++i) {
    const RopeSpot spot{i % 2 == 0, uniform(random, 0.0, 0.8)};
    const Vec2 a{0.0, 0.0}, b = moved_by(random, a, uniform(random, 0.05, 2.0));
    const double moves_a = uniform(random, 0.0, 0.4), moves_b = uniform(random, 0.0, 0.4);
    const double own = spot.from_b ? moves_b : moves_a, other = spot.from_b ? moves_a : moves_b;
    const double least_own = own * uniform(random, 0.0, 1.0), least_other = other * uniform(random, 0.0, 1.0);
    const Vec2 a1 = moved_by(random, a, spot.from_b ? least_other : least_own);
    const Vec2 b1 = moved_by(random, b, spot.from_b ? least_own : least_other);
    const double bound = own + scale * (spot_displacement(spot, own, other, norm(b - a)) - own);
    if (norm(spot_at(a1, b1, spot) - spot_at(a, b, spot)) > bound + 1e-12) ++beyond;
  }
  return beyond;
}

}  // namespace

TEST_CASE("rope spot: no movement of the ends takes it farther than its bound", "[mechanism]") {
  CHECK(beyond_bound(1.0) == 0);
}

TEST_CASE("rope spot: half of the bound on its turn is seen to fail", "[mechanism]") { CHECK(beyond_bound(0.5) > 0); }

TEST_CASE("rope spot: it lies on the run at its distance, from the end that it is measured from", "[mechanism]") {
  const Vec2 a{1.0, 2.0}, b{4.0, 6.0};
  CHECK(norm(spot_at(a, b, {false, 1.0}) - Vec2{1.6, 2.8}) < 1e-12);
  CHECK(norm(spot_at(a, b, {true, 1.0}) - Vec2{3.4, 5.2}) < 1e-12);
  CHECK(norm(spot_at(a, a, {true, 1.0}) - a) < 1e-12);
}
