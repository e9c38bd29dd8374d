#include <algorithm>
#include <cmath>

#include "render/report/account_words.h"
#include "render/report/hoist_words.h"
#include "render/report/page.h"
#include "render/report/rehearsal_report.h"
#include "render/report/words.h"
#include "render/report/wrap.h"
#include "sim/rehearsal/trouble.h"
#include "sim/trade/figure.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kFootPound = kPoundForce * kFoot;  // [J]

double greatest_pull(const RehearsalReport& report, bool back) {
  double pull = 0.0;
  for (const MoveRun& run : report.moves)
    if (run.back == back) pull = std::max(pull, run.peak_pull);
  return pull;
}

double greatest_foot_pull(const RehearsalReport& report) {
  double pull = 0.0;
  for (const MoveRun& run : report.moves) pull = std::max(pull, run.foot_pull);
  return pull;
}

std::string again_text(const StandsAgain& again, DisplayUnits units) {
  return "Then it stands again: its leans within " + format_degrees(AtMost{again.lean}, 2) +
         " of where they were, the foot " + format_small_length(AtMost{again.foot}, units) + " and the hooks " +
         format_small_length(AtMost{again.hooks}, units) + " off, " +
         (again.hooks_on_pipe ? "held by the pipe." : "not held by the pipe.");
}

std::string stroke_text(const Stroke& stroke, DisplayUnits units) {
  return "the " + stroke.part + " strikes the " + stroke.other + " at " + speed_text(AtMost{stroke.speed}, units) +
         ", a stroke of " + energy_text(AtMost{stroke.energy}, units) + ".";
}

std::string struck(const Aftermath& after, DisplayUnits units) {
  if (!after.first) return "Nothing struck anything at more than a tenth of a metre a second.";
  const std::string first = seconds_text(Nominal{after.first->time}) + " later " + stroke_text(*after.first, units);
  if (after.hardest->energy <= after.first->energy) return first;
  return first + " Hardest, after " + seconds_text(Nominal{after.hardest->time}) + ", " +
         stroke_text(*after.hardest, units);
}

std::string ends(const Aftermath& after) {
  const std::string against = after.stopped_by.empty() ? "hangs free" : "lies against: " + after.stopped_by;
  if (after.at_rest)
    return "After " + seconds_text(AtMost{after.ends - after.begins}) + " it is at rest and " + against + ".";
  return "After " + seconds_text(AtMost{after.ends - after.begins}) +
         " it still moves; nothing has stopped it for good.";
}

std::string beneath(const Aftermath& after, DisplayUnits units) {
  if (after.under.empty()) return "No moving part came lower than a head.";
  std::string text = "On the way it sweeps, lower than a head, from " +
                     place_text(AtLeast{std::max(0.0, after.under.lo)}, units) + " to " +
                     place_text(AtMost{after.under.hi}, units) + " out, stations " +
                     place_text(AtLeast{after.under_stations.lo}, units) + " to " +
                     place_text(AtMost{after.under_stations.hi}, units) + ": whoever stands there is struck.";
  if (after.hand_under) text += " The place where the line is pulled lies in it.";
  return text;
}

Figure energy_shown(Figure joules, DisplayUnits units) {
  return units == DisplayUnits::metric ? joules : joules.in(kFootPound);
}

const char* energy_unit(DisplayUnits units) { return units == DisplayUnits::metric ? " J" : " ft-lb"; }

}  // namespace

std::string speed_text(Figure speed, DisplayUnits units) {
  return units == DisplayUnits::metric ? format_decimal(speed, 2) + " m/s"
                                       : format_decimal(speed.in(kFoot), 1) + " ft/s";
}

std::string energy_text(Figure joules, DisplayUnits units) {
  const Figure shown = energy_shown(joules, units);
  return format_decimal(shown, shown.value() < 10.0 ? 1 : 0) + energy_unit(units);
}

std::string energy_bound_text(AtMost joules, DisplayUnits units, int decimals) {
  const Figure shown = energy_shown(joules, units);
  const double least = std::pow(0.1, decimals);
  const bool less = shown.value() > 0.0 && shown.value() < 0.5 * least;
  return (less ? "under " : "at most ") + format_decimal(less ? Nominal{least} : shown, decimals) + energy_unit(units);
}

std::string up_to_text(AtMost metres, DisplayUnits units) {
  const std::string text = format_small_length(metres, units);
  return text.starts_with("under ") ? text : "up to " + text;
}

std::string seconds_text(Figure seconds) { return format_decimal(seconds, seconds.value() < 1.0 ? 2 : 1) + " s"; }

bool worth_telling(const RecordedEvent& event) {
  return event.kind != RecordedEventKind::touch || event.other != "floor" || event.value > kSettles;
}

bool has_trouble(const RehearsalSubject& subject) { return !troubles(subject.report).empty(); }

std::string rehearsal_line(const RehearsalSubject& subject) {
  const auto found = trouble_texts(troubles(subject.report), subject.units);
  const std::string after = subject.model.name.empty() ? "" : ". " + subject.model.name;
  if (!found.empty()) return "TROUBLE: " + joined(found, "; ") + after;
  return "UNEVENTFUL: in " + seconds_text(Nominal{subject.report.seconds}) +
         " nothing was seen to touch, go slack or leave the pipe; that proves no clearance, a dry fit does" + after;
}

std::string rehearsal_verdict_text(const RehearsalSubject& subject, bool colour) {
  const std::string line = rehearsal_line(subject);
  return answer_text(line, line.substr(0, line.find(':')), has_trouble(subject) ? "1;31" : "1", colour);
}

std::string aftermath_sentences(const RehearsalSubject& subject) {
  const Aftermath& after = *subject.report.aftermath;
  const std::string start = "At " + seconds_text(Nominal{after.begins}) + " " + after.cause;
  if (after.nothing) return start + ". What holds: " + after.stopped_by + ".";
  if (stays(after))
    return start + ". It stays as it is, for now: it " +
           (after.stopped_by.empty() ? "hangs free" : "lies against " + after.stopped_by) +
           ". A person on it or a push can change that.";
  std::string text = start + ". At its fastest " + after.fastest + " reaches " +
                     speed_text(AtMost{after.top_speed}, subject.units) + ", the stair " +
                     energy_text(AtMost{after.energy}, subject.units) + ". " + struck(after, subject.units) + " " +
                     ends(after);
  if (after.turns_over)
    text +=
        " Its hooks went up off the pipe, and it turned by " + format_degrees(AtMost{after.turned}) +
        " more: the pick holds it nearer the rail than its weight hangs, and only the hooks' curl could hold it down.";
  if (after.hooks_left && !after.turns_over) text += " The hooks come off the pipe.";
  return text + " " + beneath(after, subject.units);
}

std::string not_tried_sentence(const RehearsalSubject& subject) {
  const auto& untried = subject.report.not_tried;
  return untried.empty() ? "" : "Asked for, and it never came: " + joined(untried, "; ") + ".";
}

std::string way_down_sentences(const RehearsalSubject& subject) {
  const RehearsalReport& report = subject.report;
  const double foot = greatest_foot_pull(report);
  std::string text;
  const auto add = [&](const std::string& sentence) { text += (text.empty() ? "" : " ") + sentence; };
  if (report.moves.empty() || !report.moves.back().back) return text;
  if (greatest_pull(report, true) > 0.0)
    add("The hand holds back up to " + force_text(AtMost{greatest_pull(report, true)}, subject.units) +
        ", where it hauled up to " + force_text(AtMost{greatest_pull(report, false)}, subject.units) +
        " on the way up.");
  if (foot > 0.0)
    add("Someone draws the foot out along the floor with up to " + force_text(AtMost{foot}, subject.units) +
        ", under a stair on its line: with a hook or a rope, from beside it.");
  if (report.again) add(again_text(*report.again, subject.units));
  if (!report.gave_up.empty())
    add("It is not carried through: " + report.gave_up + ". The stair is left as it is then.");
  return text;
}

std::string rehearsal_cautions() {
  return "A rehearsal is one run, with friction in the middle of its ranges and everybody doing as told. It shows what "
         "can "
         "happen, not what cannot: clearance is proven by the dry fit alone. Speeds and strokes are for rigid parts "
         "that do "
         "not bounce; a real stroke may do more damage or less. Keep people out from under the stair whenever it "
         "hangs.";
}

}  // namespace stowpath
