#pragma once

#include <vector>

#include "sim/loads/climber.h"
#include "sim/loads/hardware.h"
#include "sim/loads/rail.h"

namespace stowpath {

/// What the standing stair under the codes' concentrated load does to the pipe, over its whole span of stations: with
/// all on the floor, and with whichever feet in the air. Straight down.
/// @param report  not without a place
std::vector<HookForces> standing_hook_forces(const Model& model, const ClimberReport& report);

/// The same of every case there is: pushes and the load that must not break it as well. Of two hooks' forces all states
/// lie between those that are listed, and what a beam does is linear in them, so none is worse.
std::vector<HookForces> all_hook_forces(const Model& model, const ClimberReport& report);

/// What the stair on its line does to the pipe: the states between which all others lie, the dynamic factor in.
std::vector<HookForces> hoisted_hook_forces(const Scene& scene, const Model& model, const HoistLoads& hoist);

}  // namespace stowpath
