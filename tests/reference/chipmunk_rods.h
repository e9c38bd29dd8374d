#pragma once

#include "tests/support/two_rods.h"

namespace stowpath::testing {

/// The same two sections run by Chipmunk, another physics engine: bodies on pivot joints, from rest.
/// @returns turns and rates at the end of the last whole step
TwoTurns run_in_chipmunk(const TwoRods& rods, const TwoTurns& start, double time, double step);

}  // namespace stowpath::testing
