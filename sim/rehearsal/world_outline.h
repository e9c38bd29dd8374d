#pragma once

#include <vector>

#include "sim/geometry/rounded_polygon.h"

namespace stowpath {

/// Corners nearer to each other than this are taken as one [m].
inline constexpr double kLeastEdge = 5e-4;

/// An outline as the physics world can hold it: discs (one corner and a radius) and sharp convex polygons of three to
/// eight corners (radius 0), whose union is the outline. A capsule becomes a bar and two discs, a rounded polygon its
/// core, a bar an edge and a disc a corner. What is thinner than half a millimetre is made that thick. The physics
/// library stops the whole program at a polygon that it finds too small or not convex, so what comes out of here has
/// been checked.
std::vector<RoundedPolygon> world_outline(const RoundedPolygon& outline);

/// Least width that the outline has in the world, in any direction [m].
double world_thickness(const RoundedPolygon& outline);

}  // namespace stowpath
