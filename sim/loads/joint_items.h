#pragma once

#include "sim/loads/stair_items.h"

namespace stowpath {

/// All pieces of one side of a joint: hinge, its screws, pin, scab and what fixes it, and the side rail where the pin
/// is.
void add_joint(StairItems& to, std::size_t hinge, const JointLoad& joint);

}  // namespace stowpath
