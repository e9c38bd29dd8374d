#pragma once

#include "sim/hoist/pull.h"
#include "sim/loads/hardware.h"

namespace stowpath {

/// The greatest loads of a lift, raising, on every piece of the hoist: forces of the rope on its points at each pose of
/// the pull report. Poses at a dead centre, with the line slack, or where hauling cannot lift are left out.
/// @param model  the one that the report was made of
HoistLoads hoist_loads(const Model& model, const PullReport& report);

}  // namespace stowpath
