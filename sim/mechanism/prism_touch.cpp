#include "sim/mechanism/prism_touch.h"

#include <algorithm>
#include <cmath>

#include "sim/geometry/distance.h"

namespace stowpath {

namespace {

constexpr double kDrawnWithin = 1e-4;  // of a rounded edge [m]

// What of `corners` lies left of the line from a to b.
std::vector<Vec2> left_of(const std::vector<Vec2>& corners, Vec2 a, Vec2 b) {
  std::vector<Vec2> kept;
  const auto side = [&](Vec2 p) { return cross(b - a, p - a); };
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec2 p = corners[i], q = corners[(i + 1) % corners.size()];
    const double at_p = side(p), at_q = side(q);
    if (at_p >= 0.0) kept.push_back(p);
    if ((at_p > 0.0 && at_q < 0.0) || (at_p < 0.0 && at_q > 0.0)) kept.push_back(lerp(p, q, at_p / (at_p - at_q)));
  }
  return kept;
}

}  // namespace

double free_distance(const Prism& a, const Prism& b) {
  const double along_rail = gap(a.stations, b.stations);
  return std::hypot(std::max(0.0, distance(a.outline, {}, b.outline, {})), along_rail);
}

std::vector<Vec2> common_corners(const RoundedPolygon& a, const RoundedPolygon& b) {
  std::vector<Vec2> corners = drawn_corners(a, kDrawnWithin);
  const std::vector<Vec2> clip = drawn_corners(b, kDrawnWithin);
  for (std::size_t i = 0; i < clip.size() && !corners.empty(); ++i)
    corners = left_of(corners, clip[i], clip[(i + 1) % clip.size()]);
  return corners;
}

double corner_area(const std::vector<Vec2>& corners) {
  double twice = 0.0;
  for (std::size_t i = 0; i < corners.size(); ++i) twice += cross(corners[i], corners[(i + 1) % corners.size()]);
  return 0.5 * twice;
}

Interval reach_x(const std::vector<Vec2>& corners) {
  if (corners.empty()) return {1.0, 0.0};
  Interval reach{corners.front().x, corners.front().x};
  for (const Vec2 corner : corners) reach = hull(reach, {corner.x, corner.x});
  return reach;
}

Interval reach_y(const std::vector<Vec2>& corners) {
  if (corners.empty()) return {1.0, 0.0};
  Interval reach{corners.front().y, corners.front().y};
  for (const Vec2 corner : corners) reach = hull(reach, {corner.y, corner.y});
  return reach;
}

}  // namespace stowpath
