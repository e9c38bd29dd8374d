#include "render/report/recording_words.h"

#include <algorithm>
#include <iterator>
#include <numbers>

#include "render/report/hoist_words.h"
#include "render/report/rehearsal_report.h"
#include "render/report/words.h"
#include "sim/trade/figure.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

std::string degrees_text(double angle) { return format_decimal(angle / kDegree, 1) + "°"; }

std::string hinge_text(double number) { return "hinge " + format_decimal(number, 0); }

std::string touch_text(const RecordedEvent& event, DisplayUnits units) {
  return event.what + " meets " + event.other + " at " + speed_text(event.value, units) + ", " +
         energy_text(event.energy, units);
}

}  // namespace

std::string time_text(double seconds) { return format_decimal(seconds, 2) + " s"; }

std::string event_sentence(const RecordedEvent& event, DisplayUnits units) {
  const std::string line = event.what.empty() ? "the line" : event.what;
  switch (event.kind) {
    case RecordedEventKind::move_begins:
      return event.what + " begins";
    case RecordedEventKind::hooked_on:
      return line + " hooked on";
    case RecordedEventKind::hooked_off:
      return line + " hooked off";
    case RecordedEventKind::pinned:
      return hinge_text(event.value) + " pinned";
    case RecordedEventKind::unpinned:
      return hinge_text(event.value) + " unpinned";
    case RecordedEventKind::touch:
      return touch_text(event, units);
    case RecordedEventKind::zone_entered:
      return event.what + " comes into " + event.other;
    case RecordedEventKind::slack_begins:
      return line + " goes slack";
    case RecordedEventKind::slack_ends:
      return line + " comes taut, with a jerk of " + force_text(event.value, units);
    case RecordedEventKind::let_go:
      return line + " let go";
    case RecordedEventKind::line_broken:
      return line + " breaks";
    case RecordedEventKind::hooks_lift:
      return "the hooks lift from the pipe";
    case RecordedEventKind::hooks_seat:
      return "the hooks rest on the pipe again, after lifting " + format_small_length(event.value, units);
    case RecordedEventKind::pushed:
      return "pushed with " + force_text(event.value, units);
    case RecordedEventKind::gust:
      return "a gust of " + speed_text(event.value, units);
    case RecordedEventKind::strays:
      return event.what + (event.value != 0.0 ? ", by " + degrees_text(event.value) : "");
    case RecordedEventKind::at_rest:
      return "at rest";
  }
  return {};
}

bool is_trouble(RecordedEventKind kind) {
  switch (kind) {
    case RecordedEventKind::touch:
    case RecordedEventKind::zone_entered:
    case RecordedEventKind::slack_ends:
    case RecordedEventKind::let_go:
    case RecordedEventKind::line_broken:
    case RecordedEventKind::hooks_lift:
    case RecordedEventKind::strays:
      return true;
    default:
      return false;
  }
}

std::vector<RecordedEvent> told_events(const Recording& recording) {
  std::vector<RecordedEvent> told;
  std::copy_if(recording.events.begin(), recording.events.end(), std::back_inserter(told), worth_telling);
  return told;
}

double greatest_pull(const Recording& recording) {
  double most = 0.0;
  for (const RecordedFrame& frame : recording.frames) most = std::max(most, frame.hoist.pull);
  return most;
}

std::string recording_answer(const Recording& recording, DisplayUnits units) {
  const double time = recording.frames.empty() ? 0.0 : recording.frames.back().time - recording.frames.front().time;
  const std::vector<RecordedEvent> told = told_events(recording);
  const auto touches = std::count_if(told.begin(), told.end(),
                                     [](const RecordedEvent& event) { return event.kind == RecordedEventKind::touch; });
  const std::string asked = recording.options.empty() ? "the procedure" : "the procedure with " + recording.options;
  return "REHEARSED: " + asked + ", " + time_text(time) + "; " + counted(touches, "touch", "touches") +
         ", greatest pull of the line " + force_text(greatest_pull(recording), units) +
         ". A simulation: it proves no clearance.";
}

std::string recording_cautions() {
  return "A rehearsal is a simulation with a step, frictions that are guessed as ranges, and rigid parts. It shows what "
         "may happen, not that nothing else can. Clearance is what dryfit proves. Keep people out from under the stair.";
}

}  // namespace stowpath
