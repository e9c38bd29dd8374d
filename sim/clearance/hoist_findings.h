#pragma once

#include <vector>

#include "sim/clearance/dry_fit.h"

namespace stowpath {

/// Two-blocking: the tackle's two blocks come together in a move before it ends, or nearer than the margin.
std::vector<Finding> block_findings(const Model& model);

/// The room of whoever pulls, where the stair reaches it if it comes down by itself: anywhere that its farthest part gets
/// to about the pipe, over the stations that it takes at home.
std::vector<Finding> fall_findings(const Model& model);

}  // namespace stowpath
