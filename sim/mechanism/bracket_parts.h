#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Every bracket of the rail: one entry for each piece of it, with all their stations. `thing` is left for the caller.
///
/// A wall-saddle bracket is a cradle under the pipe, a rod down from it and level back to the wall, and the wall's
/// plate. A strap is a band round the pipe and a tab from it to the mounting face. A post-mounted one is an upright
/// post, with the cradle on top of it or at the end of a rod. The pipe itself stays whole: where a flat is filed into
/// it, its outline stands out of the true one by the flat's depth, on the underside.
/// @param arc_tolerance  how far the pieces of a bend or a band may stand out of the true one [m]
/// @throws SceneError where an outlined bracket's piece is not convex.
std::vector<RoomPart> bracket_parts(const Scene& scene, double arc_tolerance);

}  // namespace stowpath
