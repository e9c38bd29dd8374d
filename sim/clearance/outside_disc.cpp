#include "sim/clearance/outside_disc.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stowpath {
namespace {

constexpr double kSliver = 1e-9;  // corners nearer to each other than this are one, and a thinner piece is a bar [m]

/// The part of a convex core with dot(normal, p) of at least `least`, corner by corner.
std::vector<Vec2> beyond(const std::vector<Vec2>& core, Vec2 normal, double least) {
  std::vector<Vec2> out;
  const std::size_t n = core.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = core[i], b = core[(i + 1) % n];
    const double over_a = dot(normal, a) - least, over_b = dot(normal, b) - least;
    if (over_a >= 0.0) out.push_back(a);
    if (n > 1 && (over_a >= 0.0) != (over_b >= 0.0)) out.push_back(lerp(a, b, over_a / (over_a - over_b)));
  }
  return out;
}

void drop_repeats(std::vector<Vec2>& corners) {
  std::vector<Vec2> out;
  for (const Vec2 v : corners)
    if (out.empty() || norm(v - out.back()) > kSliver) out.push_back(v);
  while (out.size() > 1 && norm(out.front() - out.back()) <= kSliver) out.pop_back();
  corners = std::move(out);
}

double area(const std::vector<Vec2>& corners) {
  double twice = 0.0;
  for (std::size_t i = 0; i < corners.size(); ++i) twice += cross(corners[i], corners[(i + 1) % corners.size()]);
  return 0.5 * twice;
}

double span_of(const std::vector<Vec2>& corners) {
  double most = 0.0;
  for (const Vec2 v : corners) most = std::max(most, norm(v - corners.front()));
  return most;
}

/// A piece too thin for a polygon is covered by the box about it.
RoundedPolygon box_about(const std::vector<Vec2>& corners, double radius) {
  Vec2 lo = corners.front(), hi = lo;
  for (const Vec2 v : corners) {
    lo = {std::min(lo.x, v.x), std::min(lo.y, v.y)};
    hi = {std::max(hi.x, v.x), std::max(hi.y, v.y)};
  }
  RoundedPolygon box = make_box(lo - Vec2{kSliver, kSliver}, hi + Vec2{kSliver, kSliver});
  box.radius = radius;
  return box;
}

RoundedPolygon piece_of(std::vector<Vec2> corners, double radius) {
  drop_repeats(corners);
  const bool thin = corners.size() > 2 && area(corners) <= kSliver * span_of(corners);
  return thin ? box_about(corners, radius) : make_rounded_polygon(std::move(corners), radius);
}

}  // namespace

std::vector<RoundedPolygon> outside_disc(const RoundedPolygon& outline, Vec2 centre, double radius) {
  constexpr std::array kSides{Vec2{1.0, 0.0}, Vec2{-1.0, 0.0}, Vec2{0.0, 1.0}, Vec2{0.0, -1.0}};
  const double half = radius / std::numbers::sqrt2;
  std::vector<RoundedPolygon> pieces;
  for (const Vec2 side : kSides) {
    // A point of the outline that is beyond a side is within the outline's radius of a point of the core.
    std::vector<Vec2> corners = beyond(outline.core, side, dot(side, centre) + half - outline.radius);
    if (!corners.empty()) pieces.push_back(piece_of(std::move(corners), outline.radius));
  }
  return pieces;
}

}  // namespace stowpath
