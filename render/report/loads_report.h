#pragma once

#include <string>

#include "render/report/hardware_words.h"
#include "render/report/text.h"
#include "sim/hoist/weights.h"
#include "sim/loads/loads.h"

namespace stowpath {

/// All that the reports of the loads and their sheet tell of.
struct LoadsSubject {
  const Scene& scene;
  const Model& model;
  const LoadsReport& loads;
  const Weights& weights;
  bool hoisted = false;  ///< the hoist's loads are in
  DisplayUnits units = DisplayUnits::metric;
};

/// Over where a piece bears less than it gets or the pipe could not be looked at; else not said where nothing is known of
/// what a piece bears.
HardwareVerdict loads_verdict(const LoadsSubject& subject);

/// Whether all is known and every piece bears what it gets.
bool all_bear(const LoadsSubject& subject);

/// The answer on one line, unended: "OVER: 2 of 18 pieces bear less than they get, ...", "NOT SAID: ..." or "WITHIN: ...".
std::string loads_line(const LoadsSubject& subject);

/// The answer alone, ended; no more lines than it takes.
std::string loads_verdict_text(const LoadsSubject& subject, bool colour);

/// The whole report as a text, the answer first.
std::string loads_text(const LoadsSubject& subject, const TextOptions& options);

/// One JSON object, "stowpath.loads/1": SI under names that end in `_n`, `_m`, `_kg`, `_nm` and `_pa`.
std::string loads_json(const LoadsSubject& subject);

/// "one person on tread 11, one caster in the air, most on the left hook".
std::string rail_name(const Scene& scene, const HookForces& forces);

/// The rail in one paragraph: sag, stress and what it may be.
std::string rail_sentence(const LoadsSubject& subject);

/// What every load counts with.
std::string loads_assumed(const LoadsSubject& subject);

std::string loads_cautions();

}  // namespace stowpath
