#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// What of a straight rope of the room is left beyond `from` of its first end and `to` of its last, as capsules over
/// slabs of stations [m].
std::vector<RoomPart> rope_slabs(const RoomRope& rope, double from, double to);

}  // namespace stowpath
