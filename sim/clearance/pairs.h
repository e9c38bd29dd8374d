#pragma once

#include "sim/clearance/stage.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// The margin that a part of the stair keeps to a part of the room, and what play may take of it. Nothing is left out
/// here: what may touch is said by the model's contact rules alone.
/// @param wander  of the hooks in the move that it is asked for
Need room_need(const Model& model, const Wander& wander, PartKind stair, PartKind room);

/// With the hooks wandering as far as the scene's seat range.
Need room_need(const Model& model, PartKind stair, PartKind room);

/// The margin that a part of one section, or a rope, keeps to a part of another section. A rope that hangs from the room
/// stays behind while the pivot wanders, so play counts there too.
Need section_need(const Model& model, const Wander& wander, PartKind near, PartKind far);

/// The needs of a meant contact: pressed by no more than that [m]; infinite: not looked at.
Need contact_need(double depth);

}  // namespace stowpath
