#pragma once

#include <vector>

#include "sim/geometry/rounded_polygon.h"

namespace stowpath {

/// A bent round rod in the side view: the sector between two radii about a centre.
struct ArcBand {
  Vec2 centre;         ///< [m]
  double inner = 0.0;  ///< radius of the inside of the bend, positive [m]
  double outer = 0.0;  ///< radius of its outside [m]
  double from = 0.0;   ///< first angle, counter-clockwise from x [rad]
  double sweep = 0.0;  ///< positive, at most 2 pi [rad]
};

/// Convex pieces whose union holds the whole band and stands out of it by at most `tolerance` [m], never inside.
/// @throws std::invalid_argument if a radius, the sweep or the tolerance is out of range.
std::vector<RoundedPolygon> cover_arc(const ArcBand& band, double tolerance);

}  // namespace stowpath
