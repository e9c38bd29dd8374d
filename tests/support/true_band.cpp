#include "tests/support/true_band.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/geometry/distance.h"

namespace stowpath::testing {

namespace {

Vec2 on(const ArcBand& band, double radius, double angle) {
  return band.centre + radius * Vec2{std::cos(angle), std::sin(angle)};
}

}  // namespace

double off_outline(const RoundedPolygon& outline, Vec2 p) {
  return std::max(0.0, distance(outline, {}, make_disc(p, 0.0), {}));
}

double off_band(const ArcBand& band, Vec2 p) {
  constexpr double kTurn = 2.0 * std::numbers::pi;
  const Vec2 from = p - band.centre;
  double past = std::fmod(std::atan2(from.y, from.x) - band.from, kTurn);
  if (past < 0.0) past += kTurn;
  const double r = norm(from);
  if (past <= band.sweep) return std::max({0.0, r - band.outer, band.inner - r});
  double least = r + band.outer;
  for (const double end : {band.from, band.from + band.sweep})
    least = std::min(least, off_outline(make_capsule(on(band, band.inner, end), on(band, band.outer, end), 0.0), p));
  return least;
}

std::vector<Vec2> rim_points(const RoundedPolygon& outline) {
  constexpr int kBetween = 8;
  const std::vector<Vec2> corners = drawn_corners(outline, 1e-6);
  std::vector<Vec2> points;
  for (std::size_t i = 0; i < corners.size(); ++i)
    for (int k = 0; k < kBetween; ++k)
      points.push_back(lerp(corners[i], corners[(i + 1) % corners.size()], static_cast<double>(k) / kBetween));
  return points;
}

}  // namespace stowpath::testing
