#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Every bracket of the rail: one entry for each piece of it, with all their stations. `thing` is left for the caller.
///
/// A wall-saddle bracket is a cradle under the pipe, a rod down from it and level back to the wall, and the wall's
/// plate.
/// @throws SceneError where an outlined bracket's piece is not convex.
std::vector<RoomPart> bracket_parts(const Scene& scene);

}  // namespace stowpath
