#include "sim/geometry/union_outline.h"

#include <algorithm>
#include <cstddef>

#include "sim/geometry/interval.h"

namespace stowpath {
namespace {

constexpr double kWithin = 1e-7;   // what lies this deep in another polygon is covered by it [m]
constexpr double kJoins = 2e-5;    // ends of cut edges this near are one corner [m]
constexpr double kNothing = 1e-6;  // a piece of an edge this short is dropped [m]

struct Box {
  Vec2 least, greatest;
};

Box box_of(const std::vector<Vec2>& points) {
  Box box{points.front(), points.front()};
  for (const Vec2 v : points) {
    box.least = {std::min(box.least.x, v.x), std::min(box.least.y, v.y)};
    box.greatest = {std::max(box.greatest.x, v.x), std::max(box.greatest.y, v.y)};
  }
  return box;
}

bool apart(const Box& a, const Box& b) {
  return a.greatest.x < b.least.x || b.greatest.x < a.least.x || a.greatest.y < b.least.y || b.greatest.y < a.least.y;
}

struct Edge {
  Vec2 from, to;
};

/// Which stretch of an edge, from 0 to 1, lies in the polygon by more than `depth` [m].
Interval inside(const Edge& edge, const std::vector<Vec2>& polygon, double depth) {
  Interval in{0.0, 1.0};
  for (std::size_t i = 0; i < polygon.size() && !in.empty(); ++i) {
    const Vec2 corner = polygon[i], side = polygon[(i + 1) % polygon.size()] - corner;
    const double length = norm(side);
    if (length == 0.0) continue;
    const double a = cross(side, edge.from - corner) / length - depth, b = cross(side, edge.to - corner) / length - depth;
    if (a <= 0.0 && b <= 0.0) return {1.0, 0.0};
    if (a < 0.0) in.lo = std::max(in.lo, a / (a - b));
    if (b < 0.0) in.hi = std::min(in.hi, a / (a - b));
  }
  return in;
}

/// What no other polygon covers of one polygon's edges. Of edges that lie on each other the first polygon's stays.
void bare_edges(const std::vector<std::vector<Vec2>>& polygons, const std::vector<Box>& boxes, std::size_t i,
                std::vector<Edge>& out) {
  const std::vector<Vec2>& polygon = polygons[i];
  for (std::size_t k = 0; k < polygon.size(); ++k) {
    const Edge edge{polygon[k], polygon[(k + 1) % polygon.size()]};
    const Box box = box_of({edge.from, edge.to});
    IntervalSet covered;
    for (std::size_t j = 0; j < polygons.size(); ++j) {
      if (j == i || apart(box, boxes[j])) continue;
      const Interval in = inside(edge, polygons[j], j < i ? -kWithin : kWithin);
      if (!in.empty()) covered.push_back(in);
    }
    for (const Interval bare : subtract({0.0, 1.0}, unite(std::move(covered)))) {
      const Edge piece{lerp(edge.from, edge.to, bare.lo), lerp(edge.from, edge.to, bare.hi)};
      if (norm(piece.to - piece.from) > kNothing) out.push_back(piece);
    }
  }
}

/// Takes the piece that begins nearest to a point out of those left; none begins near it: false.
bool take_next(std::vector<Edge>& left, Vec2 end, Edge& next) {
  std::size_t nearest = left.size();
  double least = kJoins;
  for (std::size_t k = 0; k < left.size(); ++k) {
    const double d = norm(left[k].from - end);
    if (d <= least) nearest = k, least = d;
  }
  if (nearest == left.size()) return false;
  next = left[nearest];
  left.erase(left.begin() + static_cast<std::ptrdiff_t>(nearest));
  return true;
}

std::vector<std::vector<Vec2>> joined(std::vector<Edge> left) {
  std::vector<std::vector<Vec2>> rings;
  while (!left.empty()) {
    Edge edge = left.back();
    left.pop_back();
    std::vector<Vec2>& ring = rings.emplace_back(std::vector<Vec2>{edge.from});
    while (norm(edge.to - ring.front()) > kJoins) {
      ring.push_back(edge.to);
      if (!take_next(left, edge.to, edge)) break;
    }
  }
  return rings;
}

}  // namespace

// Andrew's monotone chain (Inf. Proc. Letters 9(5), 1979, 216-219).
std::vector<Vec2> convex_hull(std::vector<Vec2> points) {
  std::sort(points.begin(), points.end(), [](Vec2 a, Vec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() < 3) return points;
  std::vector<Vec2> hull;
  const auto add = [&hull](Vec2 p, std::size_t keep) {
    while (hull.size() > keep && cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0.0) hull.pop_back();
    hull.push_back(p);
  };
  for (const Vec2 p : points) add(p, 1);
  const std::size_t lower = hull.size();
  for (std::size_t k = points.size() - 1; k-- > 0;) add(points[k], lower);
  hull.pop_back();
  return hull;
}

std::vector<std::vector<Vec2>> union_outline(const std::vector<std::vector<Vec2>>& polygons) {
  std::vector<Box> boxes;
  for (const std::vector<Vec2>& polygon : polygons) {
    boxes.push_back(polygon.empty() ? Box{{1.0, 1.0}, {0.0, 0.0}} : box_of(polygon));
  }
  std::vector<Edge> bare;
  for (std::size_t i = 0; i < polygons.size(); ++i) bare_edges(polygons, boxes, i, bare);
  return joined(std::move(bare));
}

}  // namespace stowpath
