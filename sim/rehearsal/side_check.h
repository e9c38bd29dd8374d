#pragma once

#include "sim/rehearsal/side_world.h"

namespace stowpath {

/// What the physics library would not bear: it stops the whole program, or its floats run away.
/// @throws std::invalid_argument if the step is not over 0 and at most 1/30 s, masses do not match the model's sections
/// or
///         are not positive, or a section turns too easily for where its weight hangs.
void check_side(const Model& model, const SideSetup& setup);

}  // namespace stowpath
