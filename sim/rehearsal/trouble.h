#pragma once

#include <vector>

#include "sim/rehearsal/rehearsal.h"
#include "sim/rehearsal/roll_push.h"

namespace stowpath {

/// A foot that comes down more slowly is set down [m/s].
inline constexpr double kSettles = 0.05;
/// One that comes down faster, drops [m/s].
inline constexpr double kLands = 0.3;

/// It does not move when what held it is gone.
bool stays(const Aftermath& after);

/// What a rehearsal found that a builder has to look into, gravest first; empty: nothing was seen.
std::vector<Trouble> troubles(const RehearsalReport& report);

/// The same of a stair pushed along its rail: what binds, stays, is met or left over its range of friction. Stops of the
/// rail are there to be met.
std::vector<Trouble> troubles(const RollReport& report);

/// What a rehearsal's recording says with it.
Account account_of(const RehearsalReport& report);

}  // namespace stowpath
