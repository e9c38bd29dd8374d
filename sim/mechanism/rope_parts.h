#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// The hoist line from its ceiling point to the pick, and the runs of the fold line.
/// @throws SceneError where one takes hold of a section that does not exist.
std::vector<RopeRun> rope_runs(const Scene& scene);

/// The line from the ceiling point to where its fall is led, a fixed oblique rope: capsules over slabs of stations that
/// hold it whole, each standing out of it by at most 40 mm and a little more than the rope is thick. Empty without a
/// lead. `thing` is left for the caller.
/// @throws SceneError where the hoist rolls: its line would then lie elsewhere at every station.
std::vector<RoomPart> lead_line_parts(const Scene& scene);

}  // namespace stowpath
