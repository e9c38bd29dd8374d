#pragma once

#include <string>

#include "sim/hoist/pull.h"
#include "sim/loads/hardware.h"

namespace stowpath {

/// What a lift does to every piece of the hoist, at each pose of the pull report: raising and lowering, at the friction
/// of the report and at both ends of the scene's ranges; held, without any friction; caught there while the drive pulls
/// on; and parked at its end, with the line as it came to rest and as friction may let it settle.
///
/// Poses at a dead centre, with the line slack, or where hauling cannot lift are left out and counted, but for the pull
/// of a drive on a stair that catches there, which asks for no statics.
/// @param model  the one that the report was made of
HoistLoads hoist_loads(const Scene& scene, const Model& model, const PullReport& report);

/// How many poses were left out, and why: "no force is known at 3 poses: ..."; empty where none was.
std::string left_out_note(const HoistLoads& loads);

}  // namespace stowpath
