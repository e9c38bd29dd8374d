#include "tests/support/random_outlines.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stowpath::testing {
namespace {

constexpr double kGrid = 0.125;  // [m], exact in binary

int pick(std::mt19937& random, int count) { return std::uniform_int_distribution<int>(0, count - 1)(random); }

/// Corners on an ellipse, at angles at least a tenth of their even spacing apart.
std::vector<Vec2> ellipse_corners(std::mt19937& random, int corners, double width, double height) {
  std::vector<Vec2> out;
  const double turn = uniform(random, 0.0, 1.0), start = uniform(random, 0.0, 1.0);
  for (int k = 0; k < corners; ++k) {
    const double angle = 2.0 * std::numbers::pi * (start + (k + 0.9 * (k % 2 == 0 ? turn : 0.0)) / corners);
    out.push_back({width * std::cos(angle), height * std::sin(angle)});
  }
  return out;
}

std::vector<Vec2> sliver_corners(std::mt19937& random) {
  const double length = uniform(random, 0.1, 1.0), x = uniform(random, -0.5, 0.5), y = uniform(random, -0.5, 0.5);
  if (pick(random, 2) == 0) return {{x, y}, {x + length, y}, {x + uniform(random, 0.0, length), y + 1e-6}};
  return {{x, y}, {x + length, y}, {x + length, y + 1e-6}, {x, y + 1e-6}};
}

RoundedPolygon grid_outline(std::mt19937& random) {
  const Vec2 at{kGrid * pick(random, 4), kGrid * pick(random, 4)};
  const Vec2 to = at + Vec2{kGrid * (1 + pick(random, 5)), kGrid * (1 + pick(random, 5))};
  const double radius = kGrid * pick(random, 2);
  switch (pick(random, 6)) {
    case 0:
      return make_disc(at, radius);
    case 1:
      return make_capsule(at, {to.x, at.y}, radius);
    case 2:
      return make_capsule(at, to, radius);
    default:
      return make_rounded_polygon({at, {to.x, at.y}, to, {at.x, to.y}}, radius);
  }
}

Pose2 grid_pose(std::mt19937& random) {
  constexpr double kCosines[] = {1.0, 0.0, -1.0, 0.0};
  const int quarters = pick(random, 4);
  const Vec2 p{kGrid * (pick(random, 9) - 4), kGrid * (pick(random, 9) - 4)};
  return {p, kCosines[quarters], kCosines[(quarters + 3) % 4]};
}

Pair grid_pair(std::mt19937& random) {
  Pair out{grid_outline(random), grid_outline(random), grid_pose(random), grid_pose(random)};
  if (pick(random, 8) == 0) out.b = out.a;
  if (pick(random, 8) == 0) out.X_WB = out.X_WA;
  return out;
}

}  // namespace

double uniform(std::mt19937& random, double lo, double hi) {
  return std::uniform_real_distribution<double>(lo, hi)(random);
}

RoundedPolygon random_outline(std::mt19937& random) {
  const double radius = pick(random, 2) == 0 ? 0.0 : uniform(random, 0.0, 0.1);
  const double width = uniform(random, 0.05, 0.5), height = uniform(random, 0.05, 0.5);
  switch (pick(random, 8)) {
    case 0:
      return make_disc({width, height}, radius);
    case 1:
      return make_capsule({-width, height}, {width, -height}, radius);
    case 2:
      return make_rounded_polygon({{-width, -height}, {width, -height}, {width, height}, {-width, height}}, radius);
    case 3:
      return make_rounded_polygon(sliver_corners(random), radius);
    case 4:
      return make_rounded_polygon(ellipse_corners(random, 4 + pick(random, 9), width, height), radius);
    default:
      return make_rounded_polygon(ellipse_corners(random, 3 + pick(random, 4), width, height), radius);
  }
}

Pair random_pair(std::mt19937& random) {
  if (pick(random, 3) == 0) return grid_pair(random);
  Pair out{random_outline(random), random_outline(random), {}, {}};
  const Vec2 at{uniform(random, -9.0, 9.0), uniform(random, -9.0, 9.0)};
  const Vec2 from{uniform(random, -0.6, 0.6), uniform(random, -0.6, 0.6)};
  out.X_WA = make_pose(at, uniform(random, -4.0, 4.0));
  out.X_WB = make_pose(at + from, pick(random, 4) == 0 ? 0.0 : uniform(random, -4.0, 4.0));
  if (pick(random, 4) == 0) out.X_WB = {out.X_WB.p, out.X_WA.c, out.X_WA.s};
  return out;
}

}  // namespace stowpath::testing
