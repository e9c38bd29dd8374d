#pragma once

#include <string>
#include <vector>

#include "render/report/text.h"
#include "sim/rehearsal/rehearsal.h"

namespace stowpath {

/// All that the reports of a rehearsal tell of.
struct RehearsalSubject {
  const Scene& scene;
  const Model& model;
  const RehearsalReport& report;
  DisplayUnits units = DisplayUnits::metric;
};

/// "2.3 m/s", or "7.5 ft/s".
std::string speed_text(Figure metres_a_second, DisplayUnits units);
/// "58 J", or "43 ft-lb".
std::string energy_text(Figure joules, DisplayUnits units);
/// "at most 0.23 J", or "under 0.01 J" of what is less than half of that: a bound that is not 0 does not read as 0.
std::string energy_bound_text(AtMost joules, DisplayUnits units, int decimals);
/// "up to 12 mm", or "under 0.1 mm" of what is less.
std::string up_to_text(AtMost metres, DisplayUnits units);
/// "12.4 s".
std::string seconds_text(Figure seconds);

/// Whether it is worth telling: feet that settle on the floor are not.
bool worth_telling(const RecordedEvent& event);

/// Whether something was seen that a builder has to look into.
bool has_trouble(const RehearsalSubject& subject);

/// The answer on one line, unended: "TROUBLE: 2 pairs of parts touch, ...". It never says that anything clears.
std::string rehearsal_line(const RehearsalSubject& subject);

/// The answer alone, ended.
std::string rehearsal_verdict_text(const RehearsalSubject& subject, bool colour);

/// The whole report as a text, the answer first.
std::string rehearsal_text(const RehearsalSubject& subject, const TextOptions& options);

/// One JSON object, "stowpath.rehearsal/1": SI under names that end in `_s`, `_n`, `_m`, `_m_s`, `_j`, and `_deg`.
std::string rehearsal_json(const RehearsalSubject& subject);

/// The rolls of the procedure, each in a few sentences, all with a space after them; empty where there are none.
std::string rolls_sentences(const RehearsalSubject& subject);

/// What followed, in a few sentences.
std::string aftermath_sentences(const RehearsalSubject& subject);

/// What was asked for and never came, in a sentence; empty where all of it did.
std::string not_tried_sentence(const RehearsalSubject& subject);

/// How it came down, in a few sentences; empty where it did not set out to.
std::string way_down_sentences(const RehearsalSubject& subject);

/// What a rehearsal is not.
std::string rehearsal_cautions();

}  // namespace stowpath
