#pragma once

#include <vector>

#include "sim/scene/scene.h"

namespace stowpath {

/// The points of the room that the hoist line is led over: the ceiling point, each lead, and last the hand or drum.
/// Empty without a ceiling point.
std::vector<RoomPoint> line_route(const Scene& scene);

/// Where the line is pulled: as given, else straight below the last lead (without one, below the ceiling point) and
/// 1.2 m above the floor, or level with the lead where that is lower (common practice, no source).
/// @pre the hoist has a ceiling point
RoomPoint hand_place(const Scene& scene);

/// Half the width of what hangs between ceiling point and pick: of the tackle with its blocks, or of one line [m].
double tackle_radius(const HoistLine& line);

/// Room that a line's end takes to leave what it is made fast to: a block, or a knot on an eye of six diameters of the
/// line (common practice, no source) [m].
double knot_room(const HoistLine& line);

}  // namespace stowpath
