#pragma once

#include "sim/hoist/pull.h"
#include "sim/loads/hardware.h"

namespace stowpath {

/// What a lift does to every piece of the hoist, at each pose of the pull report: raising; caught there while the drive
/// pulls on; and parked at its end. Poses at a dead centre, with the line slack, or where hauling cannot lift are left out
/// and counted.
/// @param model  the one that the report was made of
HoistLoads hoist_loads(const Scene& scene, const Model& model, const PullReport& report);

}  // namespace stowpath
