#pragma once

#include <vector>

#include "sim/geometry/rounded_polygon.h"

namespace stowpath {

/// An outline as the physics world can hold it: discs and sharp convex polygons of at most eight corners, whose union
/// is the outline. The physics library stops the whole program at a polygon that it finds too small or not convex, so
/// what comes out of here has been checked.
struct WorldOutline {
  std::vector<RoundedPolygon> pieces;  ///< discs (one corner and a radius) and polygons (three to eight, radius 0)
  double error = 0.0;                  ///< the union may differ from the outline by up to this [m]
};

/// Corners nearer to each other than this are taken as one [m].
inline constexpr double kLeastEdge = 5e-4;

/// Cuts a rounded polygon: a capsule becomes a bar and two discs, a rounded polygon its core, a bar an edge and a disc
/// a corner. What is thinner than half a millimetre is made that thick.
WorldOutline world_outline(const RoundedPolygon& outline);

/// Least width that the outline has in the world, in any direction [m].
double world_thickness(const RoundedPolygon& outline);

}  // namespace stowpath
