#pragma once

#include <vector>

#include "sim/geometry/rounded_polygon.h"

namespace stowpath {

/// Convex pieces that together hold all of the outline that lies outside of the disc; they reach into the disc as far as
/// the square inscribed in it, upright in the outline's frame. Empty where the square holds the whole outline. [m]
std::vector<RoundedPolygon> outside_disc(const RoundedPolygon& outline, Vec2 centre, double radius);

}  // namespace stowpath
