#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "render/report/measure_text.h"
#include "sim/clearance/dry_fit.h"
#include "sim/hoist/seat.h"
#include "sim/remedy/remedies.h"
#include "sim/trade/length.h"

namespace stowpath {

/// The dry fit as one JSON object, "stowpath.dryfit/1": lengths in metres under names that end in `_m`, angles in
/// degrees under `_deg`, sentences beside them in the units shown. A number that is not finite is null. The same dry
/// fit gives the same bytes but for work.seconds.
/// @param twice  told under "measure_twice" where it has places
/// @param seat   told under "seat"; null: not looked at
/// @param cures  of the findings, under each as `remedies`; none: not looked for
std::string dry_fit_json(const Model& model, const DryFit& fit, DisplayUnits units, const MeasureTwice& twice = {},
                         const SeatReport* seat = nullptr, const std::vector<Cures>& cures = {});

/// A remedy that was written into a file, "stowpath.apply/1", with the verdict of the scene as it is there.
std::string applied_json(const Remedy& remedy, const Finding& finding, const std::string& file, const Model& model,
                         const DryFit& fit, DisplayUnits units);

/// One thing that went wrong, for a program to read; line 0 where it has no place in a file.
struct ReportedError {
  std::string file;
  int line = 0;
  int column = 0;
  std::string key, problem, hint;
};

/// Errors as one JSON object, "stowpath.error/1".
std::string errors_json(const std::vector<ReportedError>& errors);

}  // namespace stowpath
