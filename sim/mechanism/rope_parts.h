#pragma once

#include <optional>
#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// What hangs between ceiling point and pick while the line is on (the tackle or the one line, and where there is a
/// spreader its bar and legs), what rides along with a hoist that rolls, and the runs of the fold line.
/// @param hangs_to  height down to which the line hangs while it is off [m]
/// @throws SceneError where one takes hold of a section that does not exist.
std::vector<RopeRun> rope_runs(const Scene& scene, double hangs_to);

/// The two blocks of a tackle; none for a line of one part.
std::optional<Tackle> tackle_of(const Scene& scene);

/// Height of the end that hangs down while the line is not hooked on: as given, else that of the pick where it is taken
/// hold of, in the working pose [m].
double hanging_end(const Scene& scene, const Linkage& linkage, double working_lean);

}  // namespace stowpath
