#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// What a stop of the rail is called.
inline constexpr const char* kRailStop = "rail stop";

/// Everything fixed: floor, walls, ceiling, loft, guard, pipe, joints, stops, brackets, obstacles; not the line.
/// Floor, walls and ceiling are half spaces, drawn 200 m thick; Model::inside tells their faces.
/// @param arc_tolerance  how far the pieces of a bracket's bends may stand out of the true ones [m]
/// @throws SceneError where an outline is not convex.
std::vector<RoomPart> room_parts(const Scene& scene, double arc_tolerance);

/// @throws SceneError where a zone's outline is not convex.
std::vector<ZonePart> zone_parts(const Scene& scene);

/// A round upright post as slabs of stations, each a box as wide as the post's widest chord in it: outside the post, by
/// at most `excess`. `thing` is left for the caller.
std::vector<RoomPart> round_post_parts(const Obstacle& post);

}  // namespace stowpath
