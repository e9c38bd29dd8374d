#pragma once

#include <vector>

#include "sim/geometry/vec2.h"

namespace stowpath {

/// Area of a flat thing, its middle, and its second moment about that.
struct AreaMoments {
  double area = 0.0;   ///< [m2]
  Vec2 centre;         ///< [m]
  double polar = 0.0;  ///< [m4]
};

/// Of all that convex polygons cover together, counted once where they overlap.
///
/// The union is cut into a thousand strips, each taken at its middle: exact but for strips in which an edge ends, and
/// good to a part in ten thousand where no polygon is thinner than fifty strips.
AreaMoments union_moments(const std::vector<std::vector<Vec2>>& polygons);

}  // namespace stowpath
