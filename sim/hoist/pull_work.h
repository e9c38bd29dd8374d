#pragma once

#include "sim/hoist/pull.h"

namespace stowpath {

/// Adds up the work over all hauled moves, by Gauss-Legendre quadrature on each smooth segment.
///
/// Work and losses balance at every pose, friction at the direction that the move goes in. Where the line would have to
/// push, its (negative) work is booked as lost: the stair then drops by itself. So is what a section loses that swings
/// plumb by itself.
/// @param friction  false: all friction left out
WorkBook work_book(const LiftRig& rig, const Model& model, bool friction);

}  // namespace stowpath
