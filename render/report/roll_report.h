#pragma once

#include <string>

#include "render/report/text.h"
#include "sim/rehearsal/roll_push.h"

namespace stowpath {

/// All that the reports of a stair pushed along its rail tell of.
struct RollSubject {
  const Scene& scene;
  const Model& model;
  const RollReport& report;
  DisplayUnits units = DisplayUnits::metric;
};

/// Whether it moves at every friction of the range and meets nothing but the rail's stops.
bool rolls_freely(const RollSubject& subject);

/// The answer on one line, unended: "MAY BIND: pushed with 120 N 1.100 m up ...". Rolling is no verdict of clearance.
std::string roll_line(const RollSubject& subject);

/// The answer alone, ended.
std::string roll_verdict_text(const RollSubject& subject, bool colour);

/// The whole report as a text, the answer first.
std::string roll_text(const RollSubject& subject, const TextOptions& options);

/// One JSON object, "stowpath.roll/1": SI under names that end in `_n`, `_m`, `_m_s`, `_j`, and `_deg`;
/// heights count from the floor's level.
std::string roll_json(const RollSubject& subject);

/// Why it binds, or from where it would, in a few sentences.
std::string racking_sentences(const RollSubject& subject);

/// "hook shank meets the rail stop at station 7.113 m at 0.70 m/s".
std::string stop_sentence(const RollStop& stop, DisplayUnits units);

/// "0.30".
std::string friction_text(Figure friction);

/// How good the numbers are.
std::string roll_bounds_sentences(const RollSubject& subject);

/// What a roll by hand in the plan leaves out.
std::string roll_cautions();

}  // namespace stowpath
