#include "sim/rehearsal/world_outline.h"

#include <algorithm>
#include <cmath>

namespace stowpath {

namespace {

constexpr std::size_t kMostCorners = 8;
constexpr double kLeastThickness = 5e-4;  // that a thing is given [m]
constexpr double kThinnest = 0.99 * kLeastThickness;  // what is given that much may be less by rounding [m]
constexpr double kLeastTurn = 1e-4;       // sine of the turn at a corner, under which the corner is left out

std::vector<Vec2> without_near_corners(const std::vector<Vec2>& core) {
  std::vector<Vec2> kept;
  for (const Vec2 corner : core)
    if (kept.empty() || norm(corner - kept.back()) >= kLeastEdge) kept.push_back(corner);
  while (kept.size() > 1 && norm(kept.front() - kept.back()) < kLeastEdge) kept.pop_back();
  return kept;
}

bool turns(Vec2 before, Vec2 corner, Vec2 after) {
  const Vec2 in = corner - before, out = after - corner;
  return cross(in, out) > kLeastTurn * norm(in) * norm(out);
}

std::vector<Vec2> without_straight_corners(const std::vector<Vec2>& core) {
  std::vector<Vec2> kept;
  for (std::size_t i = 0; i < core.size(); ++i) {
    const Vec2 before = kept.empty() ? core.back() : kept.back();
    if (turns(before, core[i], core[(i + 1) % core.size()])) kept.push_back(core[i]);
  }
  return kept;
}

double thickness(const std::vector<Vec2>& core) {
  double least = INFINITY;
  for (std::size_t i = 0; i < core.size(); ++i) {
    const Vec2 a = core[i], along = core[(i + 1) % core.size()] - a;
    double height = 0.0;
    for (const Vec2 corner : core) height = std::max(height, cross(along, corner - a) / norm(along));
    least = std::min(least, height);
  }
  return least;
}

// Every part keeps the first corner and takes up where the last one left off.
void add_polygon(const std::vector<Vec2>& core, std::vector<RoundedPolygon>& pieces) {
  std::size_t next = 1;
  while (next + 1 < core.size()) {
    const std::size_t last = std::min(next + kMostCorners - 2, core.size() - 1);
    std::vector<Vec2> part{core.front()};
    for (std::size_t i = next; i <= last; ++i) part.push_back(core[i]);
    if (thickness(part) >= kThinnest) pieces.push_back({std::move(part), 0.0});
    next = last;
  }
}

void add_bar(Vec2 a, Vec2 b, double radius, std::vector<RoundedPolygon>& pieces) {
  const Vec2 along = b - a;
  if (norm(along) < kLeastEdge) return;
  const Vec2 side = (radius / norm(along)) * Vec2{-along.y, along.x};
  add_polygon({a - side, b - side, b + side, a + side}, pieces);
}

void add_rounding(const std::vector<Vec2>& core, double radius, std::vector<RoundedPolygon>& pieces) {
  for (std::size_t i = 0; i < core.size(); ++i) {
    pieces.push_back(make_disc(core[i], radius));
    if (i + 1 < core.size() || core.size() > 2) add_bar(core[i], core[(i + 1) % core.size()], radius, pieces);
  }
}

}  // namespace

std::vector<RoundedPolygon> world_outline(const RoundedPolygon& outline) {
  std::vector<RoundedPolygon> pieces;
  const std::vector<Vec2> core = without_near_corners(outline.core);
  if (core.size() > 2) {
    const std::vector<Vec2> bent = without_straight_corners(core);
    if (bent.size() > 2 && thickness(bent) >= kLeastThickness) add_polygon(bent, pieces);
  }
  const double least = pieces.empty() ? 0.5 * kLeastThickness : 0.0;
  const double radius = std::max(outline.radius, least);
  if (radius >= 0.5 * kLeastThickness) add_rounding(core, radius, pieces);
  return pieces;
}

double world_thickness(const RoundedPolygon& outline) {
  const double core = outline.core.size() > 2 ? thickness(outline.core) : 0.0;
  return std::max(kLeastThickness, core + 2.0 * outline.radius);
}

}  // namespace stowpath
