#pragma once

#include <vector>

#include "sim/geometry/arc.h"
#include "sim/geometry/rounded_polygon.h"

namespace stowpath::testing {

/// How far p lies from a bent rod's true shape in the side view; 0 within it [m].
double off_band(const ArcBand& band, Vec2 p);

/// How far p lies from an outline; 0 within it [m].
double off_outline(const RoundedPolygon& outline, Vec2 p);

/// Corners of an outline's drawing and points between them [m].
std::vector<Vec2> rim_points(const RoundedPolygon& outline);

}  // namespace stowpath::testing
