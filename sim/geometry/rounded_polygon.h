#pragma once

#include <vector>

#include "sim/geometry/pose2.h"
#include "sim/geometry/vec2.h"

namespace stowpath {

/// A solid convex outline: every point within `radius` of a convex core.
/// One vertex is a disc, two a capsule, three or more a polygon whose corners are rounded outward.
struct RoundedPolygon {
  std::vector<Vec2> core;  ///< convex, counter-clockwise, no repeated vertex, in the body's frame [m]
  double radius = 0.0;     ///< grown outward from the core, never negative [m]
};

/// Most vertices that a core may have.
inline constexpr int kMaxVertices = 64;

/// Checks that the core is convex, counter-clockwise and free of repeated vertices.
/// @throws std::invalid_argument, naming the vertex (counted from 1), where it is not, or where a number is not finite.
RoundedPolygon make_rounded_polygon(std::vector<Vec2> core, double radius);

RoundedPolygon make_disc(Vec2 centre, double radius);
RoundedPolygon make_capsule(Vec2 a, Vec2 b, double radius);
/// An upright box from its least to its greatest corner.
RoundedPolygon make_box(Vec2 least, Vec2 greatest);

/// A disc that holds the whole outline, in the outline's own frame.
struct BoundingDisc {
  Vec2 centre;          ///< [m]
  double radius = 0.0;  ///< [m]
};
BoundingDisc bounding_disc(const RoundedPolygon& outline);

/// The outline seen from W.
RoundedPolygon placed(const RoundedPolygon& outline_B, const Pose2& X_WB);

/// Corners for drawing: the rounding cut into chords no further than `tolerance` [m] from the true edge.
std::vector<Vec2> drawn_corners(const RoundedPolygon& outline, double tolerance);

}  // namespace stowpath
