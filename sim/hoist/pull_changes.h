#pragma once

#include "sim/hoist/pull.h"

namespace stowpath {

/// What other riggings of the same stair would need, each walked through anew: one more part of line, the pick a tenth
/// of its section's length further up or down, the ceiling point 0.3 m further out or in. Most benefit first.
/// @param peak  of the raising pull as rigged [N]
std::vector<PullChange> pull_changes(const Scene& scene, const Model& model, const PullOptions& options, double peak);

}  // namespace stowpath
