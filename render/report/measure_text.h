#pragma once

#include <span>

#include "render/report/json_values.h"
#include "render/report/page.h"
#include "sim/remedy/sensitivity.h"
#include "sim/trade/length.h"

namespace stowpath {

/// What the reports say of the tightest places.
struct MeasureTwice {
  std::span<const TightPlace> places;
  double tolerance = 0.0;  ///< how far any measurement may be off [m]
};

/// The few tightest places with the three measurements that matter most to each.
void write_measure_twice(ReportPage& page, const MeasureTwice& twice, DisplayUnits units);

/// All of them with all that count: clearances in metres, rates in m/m and m/deg.
Json measure_twice_json(const Model& model, const MeasureTwice& twice);

}  // namespace stowpath
