#include "tests/support/slow_distance.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stowpath::testing {
namespace {

struct Point {
  long double x, y;
};
using Points = std::vector<Point>;

Point turned(const Pose2& X_WB, Point v) {
  const long double c = X_WB.c, s = X_WB.s;
  return {c * v.x - s * v.y, s * v.x + c * v.y};
}

Points placed_points(const RoundedPolygon& outline, const Pose2& X_WB) {
  Points out;
  for (const Vec2 v : outline.core) {
    const Point t = turned(X_WB, {v.x, v.y});
    out.push_back({t.x + X_WB.p.x, t.y + X_WB.p.y});
  }
  return out;
}

long double along(Point n, Point p) { return n.x * p.x + n.y * p.y; }

/// How far B lies beyond A in a direction of any length but 0.
long double separation(const Points& a, const Points& b, Point n) {
  long double end_of_a = -std::numeric_limits<long double>::infinity(), start_of_b = -end_of_a;
  for (const Point p : a) end_of_a = std::max(end_of_a, along(n, p));
  for (const Point p : b) start_of_b = std::min(start_of_b, along(n, p));
  return (start_of_b - end_of_a) / std::sqrt(along(n, n));
}

/// Edges are turned as differences in the body's frame: there they are exact for nearby vertices.
long double separation_along_normals(const RoundedPolygon& owner, const Pose2& X_WO, const Points& a, const Points& b) {
  long double best = -std::numeric_limits<long double>::infinity();
  for (std::size_t i = 0, n = owner.core.size(); n > 1 && i < n; ++i) {
    const Vec2 from = owner.core[i], to = owner.core[(i + 1) % n];
    const Point e = turned(X_WO, {static_cast<long double>(to.x) - from.x, static_cast<long double>(to.y) - from.y});
    best = std::max({best, separation(a, b, {e.y, -e.x}), separation(a, b, {-e.y, e.x})});
  }
  return best;
}

long double separation_between_vertices(const Points& a, const Points& b) {
  long double best = -std::numeric_limits<long double>::infinity();
  for (const Point p : a) {
    for (const Point q : b) {
      const Point n{q.x - p.x, q.y - p.y};
      best = std::max(best, along(n, n) > 0 ? separation(a, b, n) : separation(a, b, {1, 0}));
    }
  }
  return best;
}

}  // namespace

long double slow_distance(const RoundedPolygon& a, const Pose2& X_WA, const RoundedPolygon& b, const Pose2& X_WB) {
  const Points pa = placed_points(a, X_WA), pb = placed_points(b, X_WB);
  const long double core = std::max({separation_along_normals(a, X_WA, pa, pb),
                                     separation_along_normals(b, X_WB, pa, pb), separation_between_vertices(pa, pb)});
  return core - a.radius - b.radius;
}

}  // namespace stowpath::testing
