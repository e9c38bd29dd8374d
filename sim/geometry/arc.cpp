#include "sim/geometry/arc.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace stowpath {
namespace {

void check(const ArcBand& band, double tolerance) {
  const bool radii = band.inner > 0.0 && band.outer > band.inner && std::isfinite(band.outer);
  const bool angles = band.sweep > 0.0 && band.sweep <= 2.0 * std::numbers::pi && std::isfinite(band.from);
  if (!radii) throw std::invalid_argument("arc: needs 0 < inner < outer");
  if (!angles) throw std::invalid_argument("arc: the sweep must be more than 0 and at most a full turn");
  if (!(tolerance > 0.0) || !std::isfinite(tolerance))
    throw std::invalid_argument("arc: the tolerance must be positive");
}

}  // namespace

std::vector<RoundedPolygon> cover_arc(const ArcBand& band, double tolerance) {
  check(band, tolerance);
  // A wedge of half-angle h has its outer corners at outer / cos h, so that its outer edge touches the circle, and its
  // inner edge is a chord: it stands out by outer (1 / cos h - 1) outside and by inner (1 - cos h) inside. The last
  // part in a thousand is left for rounding.
  const double most = std::acos(1.0 / (1.0 + 0.999 * tolerance / band.outer));
  const int pieces = std::max(2, static_cast<int>(std::ceil(band.sweep / (2.0 * most))));
  const double half = 0.5 * band.sweep / pieces;
  const double outer = band.outer / std::cos(half);
  std::vector<RoundedPolygon> out;
  for (int k = 0; k < pieces; ++k) {
    const double a0 = band.from + band.sweep * k / pieces, a1 = band.from + band.sweep * (k + 1) / pieces;
    const Vec2 d0{std::cos(a0), std::sin(a0)}, d1{std::cos(a1), std::sin(a1)};
    out.push_back(make_rounded_polygon({band.centre + band.inner * d0, band.centre + outer * d0,
                                        band.centre + outer * d1, band.centre + band.inner * d1},
                                       0.0));
  }
  return out;
}

}  // namespace stowpath
