#pragma once

#include "render/report/json_values.h"
#include "render/report/page.h"
#include "sim/hoist/weights.h"
#include "sim/trade/length.h"

namespace stowpath {

/// The bill of masses as a table, and the sections' sums under it.
void write_masses(ReportPage& page, const Weights& weights, DisplayUnits units);

Json masses_json(const Weights& weights, const Model& model);

}  // namespace stowpath
