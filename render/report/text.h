#pragma once

#include <string>
#include <vector>

#include "render/report/measure_text.h"
#include "sim/clearance/dry_fit.h"
#include "sim/hoist/seat.h"
#include "sim/remedy/remedies.h"
#include "sim/trade/length.h"

namespace stowpath {

struct TextOptions {
  DisplayUnits units = DisplayUnits::metric;
  bool colour = false;               ///< escape sequences for a terminal; they repeat what words say
  MeasureTwice twice{};              ///< nothing is said of it where it has no places
  const SeatReport* seat = nullptr;  ///< how the hooks bear on the pipe; null: nothing is said of it
  bool contacts = false;             ///< list all that may touch; else their number alone
};

/// The dry fit as a text of at most 100 columns: the verdict on its first line, then findings, moves, the hooks' seat,
/// what to measure twice, reach, what was taken for granted, limits and work.
/// @param cures  of the findings, under each; none: not looked for
std::string dry_fit_text(const Model& model, const DryFit& fit, const TextOptions& options,
                         const std::vector<Cures>& cures = {});

/// The verdict alone, ended; one line unless there is much to count.
std::string verdict_text(const Model& model, const DryFit& fit, bool colour);

/// Limits of the model and who has to be asked, one sentence each: the report and the sheet print the same.
std::string cautions_text();

}  // namespace stowpath
