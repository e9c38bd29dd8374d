#pragma once

#include <vector>

#include "sim/loads/climber.h"
#include "sim/loads/rail.h"

namespace stowpath {

/// What the standing stair does to the pipe, over its whole span of stations: the hooks share the heaviest place's load
/// alike, or each hook in turn carries what it does while only one caster touches the floor. Straight down: the floor's
/// friction could add a thrust outward.
/// @param report  not without a place
std::vector<HookForces> standing_hook_forces(const Scene& scene, const Model& model, const ClimberReport& report);

}  // namespace stowpath
