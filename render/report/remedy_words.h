#pragma once

#include <string>

#include "sim/remedy/remedies.h"
#include "sim/trade/length.h"

namespace stowpath {

// How cures are said, in the report, in JSON and where one is applied.

/// "move strip light out by 331 mm (out 2350, 2470 to 2681, 2801)": what is done, without what it gives.
std::string change_sentence(const Change& change, DisplayUnits units);

/// What a remedy does, what it gives and what it costs elsewhere, in one sentence without its id.
std::string remedy_sentence(const Remedy& remedy, const Finding& finding, DisplayUnits units);

/// What stands over a finding's cures, or says that there are none.
std::string cures_heading(const Cures& cures);

/// The cures of a finding; nullptr if they were not looked for.
const Cures* cures_of(const std::vector<Cures>& cures, const Finding& finding);

}  // namespace stowpath
