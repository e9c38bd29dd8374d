#pragma once

#include "sim/clearance/stage.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// How far a meant contact may be pressed before it counts as interference: what fitting takes up [m].
inline constexpr double kFit = 5e-4;

/// What a part of the stair needs of a part of the room. Meant contacts (design's list) need no margin; they are
/// silent, and are found where they are pressed beyond fit.
/// @param wander  of the hooks in the move that it is asked for
Need room_need(const Model& model, const Wander& wander, PartKind stair, PartKind room);

/// With the hooks wandering as far as the scene's seat range.
Need room_need(const Model& model, PartKind stair, PartKind room);

/// What a part of one section needs of a part of a section nearer the rail.
/// @param adjacent  the sections share a hinge
/// @param folded    that hinge's fold is at least a quarter turn: ends that were butted are past each other
Need section_need(const Model& model, PartKind near, PartKind far, bool adjacent, bool folded);

}  // namespace stowpath
