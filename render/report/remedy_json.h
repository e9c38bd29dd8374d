#pragma once

#include "render/report/json_values.h"
#include "sim/remedy/remedies.h"
#include "sim/trade/length.h"

namespace stowpath {

/// A finding's remedies as a JSON array, empty where there are none or they were not looked for: lengths in metres
/// ("unit": "m"), angles in degrees ("unit": "deg"). Where a remedy moves several numbers, `change`, `from` and `to`
/// are the first one's, and `changes` has all.
Json remedies_json(const std::vector<Cures>& cures, const Finding& finding, DisplayUnits units);

/// One remedy, with its id.
Json remedy_json(const Remedy& remedy, const Finding& finding, DisplayUnits units);

}  // namespace stowpath
