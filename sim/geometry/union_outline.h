#pragma once

#include <vector>

#include "sim/geometry/vec2.h"

namespace stowpath {

/// The convex hull of points, counter-clockwise; fewer than three corners where they lie on one line [m].
std::vector<Vec2> convex_hull(std::vector<Vec2> points);

/// The border of all that convex polygons cover together, as closed rings: counter-clockwise about the whole,
/// clockwise about each hole [m].
///
/// For drawings: where an edge is cut is good to a micrometre or so, and two polygons that only touch along an edge keep
/// one line between them.
/// @param polygons  counter-clockwise
std::vector<std::vector<Vec2>> union_outline(const std::vector<std::vector<Vec2>>& polygons);

}  // namespace stowpath
