#pragma once

#include <string>

#include "render/report/text.h"
#include "sim/hoist/effort.h"
#include "sim/hoist/weights.h"
#include "sim/loads/hardware.h"

namespace stowpath {

/// All that the hoist's reports and its sheet tell of.
struct HoistSubject {
  const Scene& scene;
  const Model& model;
  const PullReport& pull;
  const HoistEffort& effort;
  const Holding& holding;
  const Weights& weights;
  const std::vector<HardwareItem>& hardware;  ///< of the hoist, weakest first
  DisplayUnits units = DisplayUnits::metric;
};

/// The answer on one line, unended: "WITHIN: one person can haul this, ...".
std::string hoist_line(const HoistSubject& subject);

/// The answer alone, ended; no more lines than it takes.
std::string hoist_verdict_text(const HoistSubject& subject, bool colour);

/// The whole report as a text of at most 100 columns but for the tables' last column, the answer on its first line.
std::string hoist_text(const HoistSubject& subject, const TextOptions& options);

/// One JSON object, "stowpath.hoist/1": SI under names that end in `_n`, `_m`, `_kg`, `_j`, `_nm`, and `_deg`.
std::string hoist_json(const HoistSubject& subject);

}  // namespace stowpath
