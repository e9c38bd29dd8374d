#include "tests/reference/prism.h"

#include <cmath>
#include <limits>

namespace stowpath::testing {
namespace {

Outline placed_outline(const Prism& p) {
  Outline out;
  out.place(Outline(p.outline), p.X_WB);
  return out;
}

Vec2 nearest_on_segment(Vec2 a, Vec2 b, Vec2 p) {
  const Vec2 e = b - a;
  return a + std::min(1.0, std::max(0.0, dot(p - a, e) / norm_squared(e))) * e;
}

/// The point of a convex polygon nearest to p.
Vec2 project(const std::vector<Vec2>& polygon, Vec2 p) {
  bool inside = true;
  Vec2 best = polygon.front();
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    inside = inside && cross(b - a, p - a) >= 0.0;
    const Vec2 q = nearest_on_segment(a, b, p);
    if (norm_squared(q - p) < norm_squared(best - p)) best = q;
  }
  return inside ? p : best;
}

struct Solid {
  std::vector<Vec2> polygon;
  Interval stations;

  Point3 project(const Point3& p) const {
    const Vec2 q = testing::project(polygon, {p[0], p[1]});
    return {q.x, q.y, std::min(stations.hi, std::max(stations.lo, p[2]))};
  }
  /// How far the solid reaches in direction n.
  double reach(const Point3& n) const {
    double most = -std::numeric_limits<double>::infinity();
    for (const Vec2 v : polygon) most = std::max(most, n[0] * v.x + n[1] * v.y);
    return most + std::max(n[2] * stations.lo, n[2] * stations.hi);
  }
};

double length(const Point3& v) { return std::sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]); }

double separation_along(const Solid& a, const Solid& b, const Point3& n) {
  return (-b.reach({-n[0], -n[1], -n[2]}) - a.reach(n)) / length(n);
}

}  // namespace

double prism_distance(const Prism& a, const Prism& b) {
  const double d = signed_distance(placed_outline(a), placed_outline(b));
  return std::hypot(std::max(d, 0.0), gap(a.stations, b.stations));
}

double prism_overlap(const Prism& a, const Prism& b) {
  return std::min(-signed_distance(placed_outline(a), placed_outline(b)), overlap(a.stations, b.stations));
}

Enclosure alternating_projections(const Prism& a, const Prism& b, double tolerance, int most_steps) {
  const Solid A{placed(a.outline, a.X_WB).core, a.stations}, B{placed(b.outline, b.X_WB).core, b.stations};
  Point3 on_a{A.polygon[0].x, A.polygon[0].y, A.stations.lo};
  Enclosure out{0.0, std::numeric_limits<double>::infinity()};
  for (int step = 0; step < most_steps && out.at_most - out.at_least > tolerance; ++step) {
    const Point3 on_b = B.project(on_a);
    on_a = A.project(on_b);
    const Point3 n{on_b[0] - on_a[0], on_b[1] - on_a[1], on_b[2] - on_a[2]};
    out.at_most = length(n);
    if (out.at_most > 0.0) out.at_least = std::max(out.at_least, separation_along(A, B, n));
  }
  return out;
}

}  // namespace stowpath::testing
