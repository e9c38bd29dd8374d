#pragma once

#include <vector>

#include "sim/clearance/dry_fit.h"

namespace stowpath {

/// The ropes that stay where they are in the room (the led-off line, and the line that hangs while it is not hooked on)
/// against everything else there: they move nowhere, and are looked at once.
std::vector<Finding> fixed_line_findings(const Model& model);

}  // namespace stowpath
