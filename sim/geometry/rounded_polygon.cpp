#include "sim/geometry/rounded_polygon.h"

#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>
#include <string>

namespace stowpath {
namespace {

/// A vertex where the outline turns by less than this is dropped: it moves the edge by under 1e-12 of its length, and
/// the distance kernel may then rely on its edges' order surviving any rotation.
constexpr double kLeastTurn = 1e-12;  // [rad]

[[noreturn]] void refuse(std::size_t vertex, const std::string& why) {
  throw std::invalid_argument("outline, vertex " + std::to_string(vertex + 1) + ": " + why);
}

void check_numbers(const std::vector<Vec2>& core, double radius) {
  if (core.empty()) throw std::invalid_argument("outline: it has no vertex");
  if (core.size() > kMaxVertices) refuse(kMaxVertices, "more than " + std::to_string(kMaxVertices) + " vertices");
  if (!(radius >= 0.0) || !std::isfinite(radius))
    throw std::invalid_argument("outline: the radius is negative or not finite");
  for (std::size_t i = 0; i < core.size(); ++i) {
    if (!std::isfinite(core[i].x) || !std::isfinite(core[i].y)) refuse(i, "not finite");
    // Shorter than 1e-154 m, an edge's squared length is no normal number and its direction would be lost.
    const double edge2 = norm_squared(core[(i + 1) % core.size()] - core[i]);
    if (core.size() > 1 && edge2 < std::numeric_limits<double>::min()) refuse(i, "repeats the next one");
  }
}

bool turns(Vec2 before, Vec2 after) {
  return std::abs(cross(before, after)) > kLeastTurn * norm(before) * norm(after) || dot(before, after) < 0.0;
}

std::vector<Vec2> without_straight_vertices(const std::vector<Vec2>& core) {
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < core.size(); ++i) {
    const Vec2 previous = out.empty() ? core.back() : out.back();
    if (turns(core[i] - previous, core[(i + 1) % core.size()] - core[i])) out.push_back(core[i]);
  }
  return out;
}

/// Convex and wound once: every corner turns left, and all turns add up to one round.
void check_convex(const std::vector<Vec2>& core) {
  double round = 0.0;
  for (std::size_t i = 0; i < core.size(); ++i) {
    const Vec2 in = core[i] - core[(i + core.size() - 1) % core.size()];
    const Vec2 out = core[(i + 1) % core.size()] - core[i];
    if (cross(in, out) <= 0.0) refuse(i, "the outline turns inward there (or runs clockwise)");
    round += std::atan2(cross(in, out), dot(in, out));
  }
  if (round > 3.0 * std::numbers::pi) throw std::invalid_argument("outline: it winds round more than once");
}

}  // namespace

RoundedPolygon make_rounded_polygon(std::vector<Vec2> core, double radius) {
  check_numbers(core, radius);
  if (core.size() > 2) {
    core = without_straight_vertices(core);
    if (core.size() < 3) throw std::invalid_argument("outline: all its vertices lie on one line");
    check_convex(core);
  }
  return {std::move(core), radius};
}

RoundedPolygon make_disc(Vec2 centre, double radius) { return make_rounded_polygon({centre}, radius); }

RoundedPolygon make_capsule(Vec2 a, Vec2 b, double radius) {
  return a == b ? make_disc(a, radius) : make_rounded_polygon({a, b}, radius);
}

RoundedPolygon make_box(Vec2 least, Vec2 greatest) {
  return make_rounded_polygon({least, {greatest.x, least.y}, greatest, {least.x, greatest.y}}, 0.0);
}

BoundingDisc bounding_disc(const RoundedPolygon& outline) {
  Vec2 lo = outline.core.front(), hi = lo;
  for (const Vec2 v : outline.core) {
    lo = {std::min(lo.x, v.x), std::min(lo.y, v.y)};
    hi = {std::max(hi.x, v.x), std::max(hi.y, v.y)};
  }
  BoundingDisc disc{0.5 * (lo + hi), 0.0};
  for (const Vec2 v : outline.core) disc.radius = std::max(disc.radius, norm(v - disc.centre));
  disc.radius += outline.radius;
  return disc;
}

RoundedPolygon placed(const RoundedPolygon& outline_B, const Pose2& X_WB) {
  RoundedPolygon out = outline_B;
  for (Vec2& v : out.core) v = X_WB * v;
  return out;
}

std::vector<Vec2> drawn_corners(const RoundedPolygon& outline, double tolerance) {
  if (outline.radius <= tolerance) return outline.core;
  const double step = 2.0 * std::acos(std::max(0.0, 1.0 - tolerance / outline.radius));
  const std::size_t n = outline.core.size();
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 c = outline.core[i];
    const Vec2 in = n == 1 ? Vec2{1.0, 0.0} : c - outline.core[(i + n - 1) % n];
    const Vec2 next = n == 1 ? Vec2{1.0, 0.0} : outline.core[(i + 1) % n] - c;
    const double from = std::atan2(in.y, in.x) - 0.5 * std::numbers::pi;
    double turn = n == 1 ? 2.0 * std::numbers::pi : std::atan2(cross(in, next), dot(in, next));
    if (n == 2) turn = std::numbers::pi;
    const int pieces = std::max(1, static_cast<int>(std::ceil(turn / step)));
    for (int k = 0; k <= pieces - (n == 1 ? 1 : 0); ++k) {
      const double angle = from + turn * k / pieces;
      out.push_back(c + outline.radius * Vec2{std::cos(angle), std::sin(angle)});
    }
  }
  return out;
}

}  // namespace stowpath
