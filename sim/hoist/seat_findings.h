#pragma once

#include <vector>

#include "sim/clearance/dry_fit.h"
#include "sim/hoist/seat.h"

namespace stowpath {

/// What is wrong with the hooks' seat, told as a builder would: the pipe bearing too near the curl's end, and the hooks
/// coming off with nothing above to stop the stair before they are. One finding for each, over all moves; no numbers.
std::vector<Finding> seat_findings(const Model& model, const SeatReport& report);

}  // namespace stowpath
