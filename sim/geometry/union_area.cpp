#include "sim/geometry/union_area.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <utility>

#include "sim/geometry/interval.h"

namespace stowpath {

namespace {

constexpr int kStrips = 1000;

Interval extent(const std::vector<std::vector<Vec2>>& polygons) {
  Interval x{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
  for (const auto& polygon : polygons)
    for (const Vec2 corner : polygon) x = {std::min(x.lo, corner.x), std::max(x.hi, corner.x)};
  return x;
}

/// What a convex polygon covers of the upright line at x; empty where it misses it.
Interval chord(const std::vector<Vec2>& polygon, double x) {
  Interval y{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    if ((a.x < x) == (b.x < x)) continue;
    const double at = lerp(a, b, (x - a.x) / (b.x - a.x)).y;
    y = {std::min(y.lo, at), std::max(y.hi, at)};
  }
  return y;
}

IntervalSet covered(const std::vector<std::vector<Vec2>>& polygons, double x) {
  IntervalSet chords;
  for (const auto& polygon : polygons) {
    const Interval y = chord(polygon, x);
    if (!y.empty()) chords.push_back(y);
  }
  return unite(std::move(chords));
}

}  // namespace

AreaMoments union_moments(const std::vector<std::vector<Vec2>>& polygons) {
  const Interval x = extent(polygons);
  if (x.empty()) return {};
  const double width = x.length() / kStrips;
  double area = 0.0, second = 0.0;
  Vec2 first;
  for (int k = 0; k < kStrips; ++k) {
    const double at = x.lo + (k + 0.5) * width;
    for (const Interval y : covered(polygons, at)) {
      const double strip = width * y.length(), middle = y.middle();
      area += strip;
      first = first + strip * Vec2{at, middle};
      second += strip * (at * at + middle * middle + y.length() * y.length() / 12.0 + width * width / 12.0);
    }
  }
  if (!(area > 0.0)) return {};
  const Vec2 centre = 1.0 / area * first;
  return {area, centre, second - area * norm_squared(centre)};
}

}  // namespace stowpath
