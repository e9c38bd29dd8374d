#pragma once

#include <vector>

#include "sim/clearance/dry_fit.h"
#include "sim/hoist/seat.h"

namespace stowpath {

/// What is wrong with the hooks' seat, told as a builder would: the hooks coming off with nothing above that is proven
/// to stop the stair before they are, and the pipe bearing too near the curl's end; and, as undecided, what is not
/// known of it. One finding for each, over all moves.
std::vector<Finding> seat_findings(const Model& model, const SeatReport& report);

}  // namespace stowpath
