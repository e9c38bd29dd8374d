#pragma once

#include <vector>

#include "render/report/json_values.h"
#include "sim/rehearsal/account.h"
#include "sim/trade/length.h"

namespace stowpath {

/// Step, energy and differences, in SI; "half_step" is null where it was not run again.
Json bounds_json(const RehearsalBounds& bounds);

/// Each with its kind as a recording names it, its values in SI (docs/recording.md) and its words.
Json troubles_json(const std::vector<Trouble>& troubles, DisplayUnits units);

}  // namespace stowpath
