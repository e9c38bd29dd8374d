#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>

#include "sim/scene/scene_parts.h"

namespace stowpath {
namespace {

constexpr double kSamePoint = 1e-9;  // far below any tape, far above the rounding of a unit [m]

using Corners = std::vector<Vec2>;

const Vec2& around(const Corners& corners, std::size_t i) { return corners[i % corners.size()]; }

bool same_point(Vec2 a, Vec2 b) { return norm(a - b) < kSamePoint; }

bool all_finite(const Corners& corners) {
  return std::all_of(corners.begin(), corners.end(), [](Vec2 p) { return std::isfinite(p.x) && std::isfinite(p.y); });
}

double twice_area(const Corners& corners) {
  double sum = 0.0;
  for (std::size_t i = 0; i < corners.size(); ++i)
    sum += cross(corners[i] - corners[0], around(corners, i + 1) - corners[0]);
  return sum;
}

int side(Vec2 a, Vec2 b, Vec2 p) {
  const double turn = cross(b - a, p - a);
  const double slack = kSamePoint * norm(b - a);
  return turn > slack ? 1 : turn < -slack ? -1 : 0;
}

bool between(Vec2 a, Vec2 b, Vec2 p) { return dot(p - a, p - b) <= 0.0; }

// Touching counts: an outline that touches itself is no simple one either.
bool edges_meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const int c_side = side(a, b, c), d_side = side(a, b, d), a_side = side(c, d, a), b_side = side(c, d, b);
  if (c_side * d_side < 0 && a_side * b_side < 0) return true;
  return (c_side == 0 && between(a, b, c)) || (d_side == 0 && between(a, b, d)) || (a_side == 0 && between(c, d, a)) ||
         (b_side == 0 && between(c, d, b));
}

bool repeats(const Corners& corners, const std::vector<Setting>& items) {
  for (std::size_t i = 0; i < corners.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!same_point(corners[i], corners[j])) continue;
      items[i].fault("this corner is the same point as corner " + std::to_string(j + 1),
                     "give each corner once; the outline closes by itself");
      return true;
    }
  }
  return false;
}

bool crosses_itself(const Corners& corners, const std::vector<Setting>& items) {
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 2; j < n; ++j) {
      if (i == 0 && j + 1 == n) continue;  // neighbours round the end
      if (!edges_meet(corners[i], corners[i + 1], corners[j], around(corners, j + 1))) continue;
      items[j].fault(
          "the outline crosses itself: the edge from this corner meets the one from corner " + std::to_string(i + 1),
          "give the corners in order round the outline");
      return true;
    }
  }
  return false;
}

bool has_dents(const Corners& corners, const std::vector<Setting>& items) {
  const double turning = twice_area(corners) > 0 ? 1.0 : -1.0;
  bool dents = false;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec2 before = around(corners, i + corners.size() - 1), after = around(corners, i + 1);
    if (turning * cross(corners[i] - before, after - corners[i]) >= -kSamePoint * norm(after - before)) continue;
    items[i].fault("the outline has a dent at this corner",
                   "split the thing into convex pieces, each with its own entry");
    dents = true;
  }
  return dents;
}

// The hull of corners that are convex but for rounding: never smaller than what was written.
// Source: Andrew (1979), Information Processing Letters 9(5) 216-219.
Corners counter_clockwise_hull(Corners corners) {
  std::sort(corners.begin(), corners.end(), [](Vec2 a, Vec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  Corners hull;
  for (int half = 0; half < 2; ++half) {
    const std::size_t start = hull.size();
    for (const Vec2 p : corners) {
      while (hull.size() >= start + 2 && cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0.0)
        hull.pop_back();
      hull.push_back(p);
    }
    hull.pop_back();
    std::reverse(corners.begin(), corners.end());
  }
  return hull;
}

bool on_one_line(const Corners& corners, const Setting& outline) {
  double longest = 0.0;
  for (const Vec2 p : corners) longest = std::max(longest, norm(p - corners[0]));
  if (std::abs(twice_area(corners)) > kSamePoint * longest) return false;
  // A bow tie has no area either, but its corners do not lie on one line.
  for (std::size_t i = 2; i < corners.size(); ++i) {
    if (side(corners[0], corners[1], corners[i]) != 0) return false;
  }
  outline.fault("the corners lie on one line", "give two corners and a radius, or corners that enclose an area");
  return true;
}

Corners read_bar(const Setting& outline, const Corners& corners, double radius) {
  if (radius <= 0.0) {
    outline.fault(
        corners.size() == 1 ? "one corner without a radius is no solid" : "two corners without a radius are no solid",
        "give a radius as well, or at least three corners");
  } else if (corners.size() == 2 && same_point(corners[0], corners[1])) {
    outline.fault("its two corners are the same point", "give one corner and a radius for a disc");
  }
  return corners;
}

}  // namespace

std::vector<Vec2> read_outline(const Setting& outline, double radius) {
  const Corners corners = outline.points();
  if (corners.empty() || !all_finite(corners)) return corners;
  if (corners.size() < 3) return read_bar(outline, corners, radius);
  const std::vector<Setting> items = outline.items();
  if (repeats(corners, items) || on_one_line(corners, outline)) return corners;
  if (crosses_itself(corners, items) || has_dents(corners, items)) return corners;
  return counter_clockwise_hull(corners);
}

std::vector<Vec2> read_box(const Setting& box) {
  const Interval out = box.at("out").interval(), up = box.at("up").interval();
  return {{out.lo, up.lo}, {out.hi, up.lo}, {out.hi, up.hi}, {out.lo, up.hi}};
}

}  // namespace stowpath
