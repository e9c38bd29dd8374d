#pragma once

#include "render/report/json_values.h"
#include "sim/hoist/seat.h"
#include "sim/trade/length.h"

namespace stowpath {

/// The hooks' seat as an object: forces under names that end in `_N`; angles on the bend count from the shank.
Json seat_json(const Model& model, const SeatReport& report, DisplayUnits units);

}  // namespace stowpath
