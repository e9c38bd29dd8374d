#pragma once

#include <string>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/geometry/rounded_polygon.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// A convex outline of the side view times one stretch of stations.
struct Prism {
  const RoundedPolygon& outline;
  Interval stations;
};

/// Free distance between two prisms of one frame; 0 where they touch or overlap [m].
double free_distance(const Prism& a, const Prism& b);

/// What two convex outlines cover together: corners, counter-clockwise; none where they do not overlap [m].
std::vector<Vec2> common_corners(const RoundedPolygon& a, const RoundedPolygon& b);

/// Area within corners given counter-clockwise [m2].
double corner_area(const std::vector<Vec2>& corners);

/// From where to where corners reach along x, and along y [m].
Interval reach_x(const std::vector<Vec2>& corners);
Interval reach_y(const std::vector<Vec2>& corners);

}  // namespace stowpath
