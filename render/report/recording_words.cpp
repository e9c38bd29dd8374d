#include "render/report/recording_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <numbers>

#include "render/report/account_words.h"
#include "render/report/hoist_words.h"
#include "render/report/rehearsal_report.h"
#include "render/report/words.h"
#include "sim/rehearsal/trouble.h"
#include "sim/trade/figure.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kThere = 1e-6;  // nearer than this to a station, the stair is there [m]

constexpr std::array kGravest{
    RecordedEventKind::leaves_pipe, RecordedEventKind::turns_over,   RecordedEventKind::line_broken,
    RecordedEventKind::let_go,      RecordedEventKind::gives_up,     RecordedEventKind::hooks_lift,
    RecordedEventKind::touch,       RecordedEventKind::zone_entered, RecordedEventKind::slack_ends,
    RecordedEventKind::binds,       RecordedEventKind::stays,        RecordedEventKind::brought,
    RecordedEventKind::strays};

constexpr double kDegree = std::numbers::pi / 180.0;

std::string degrees_text(double angle) { return format_decimal(AtMost{std::abs(angle) / kDegree}, 1) + "°"; }

std::string hinge_text(double number) { return "hinge " + format_decimal(Nominal{number}, 0); }

std::string touch_text(const RecordedEvent& event, DisplayUnits units) {
  return event.what + " meets " + event.other + " at " + speed_text(AtMost{event.value}, units) + ", " +
         energy_text(AtMost{event.energy}, units);
}

// Whether the procedure was gone about at all.
bool works(const Recording& recording) {
  return std::any_of(recording.events.begin(), recording.events.end(), [](const RecordedEvent& event) {
    return event.kind == RecordedEventKind::move_begins || event.kind == RecordedEventKind::hooked_on;
  });
}

std::string greatest_forces(const Recording& recording, DisplayUnits units) {
  double push = 0.0;
  bool line = false;
  for (const RecordedFrame& frame : recording.frames) {
    push = std::max(push, std::abs(frame.push));
    line = line || frame.hoist.on;
  }
  return (line ? ", greatest pull of the line " + force_text(AtMost{greatest_pull(recording)}, units) : "") +
         (push > 0.0 ? ", greatest push along the rail " + force_text(AtMost{push}, units) : "");
}

std::string outcome(const Recording& recording, DisplayUnits units) {
  if (!recording.account) return "";
  const auto found = trouble_texts(recording.account->troubles, units);
  if (found.empty()) return " UNEVENTFUL: nothing was seen that has to be looked into.";
  return " TROUBLE: " + joined(found, "; ") + ".";
}

}  // namespace

std::string time_text(Figure seconds) { return format_decimal(seconds, 2) + " s"; }

std::string event_sentence(const RecordedEvent& event, DisplayUnits units) {
  const std::string line = event.what.empty() ? "the line" : event.what;
  switch (event.kind) {
    case RecordedEventKind::move_begins:
      return event.what + " begins";
    case RecordedEventKind::hooked_on:
      return line + " hooked on";
    case RecordedEventKind::hooked_off:
      return line + " hooked off";
    case RecordedEventKind::parked:
      return event.what.empty() ? "parked" : "parked, the line made fast on " + event.what;
    case RecordedEventKind::lowers_away:
      return "lowering away: from here on backwards";
    case RecordedEventKind::gives_up:
      return "the crew give up: " + event.what;
    case RecordedEventKind::turns_over:
      return "the stair turns over about its pick, by " + degrees_text(event.value) + " so far";
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
      return line + " comes taut, with a jerk of " + force_text(AtMost{event.value}, units);
    case RecordedEventKind::let_go:
      return line + " let go";
    case RecordedEventKind::line_broken:
      return line + " breaks";
    case RecordedEventKind::hooks_lift:
      return "the hooks lift from the pipe";
    case RecordedEventKind::hooks_seat:
      return "the hooks rest on the pipe again, after lifting " + format_small_length(AtMost{event.value}, units);
    case RecordedEventKind::pushed:
      return "pushed with " + force_text(AtMost{event.value}, units);
    case RecordedEventKind::gust:
      return "a gust of " + speed_text(AtMost{event.value}, units);
    case RecordedEventKind::strays:
      return event.what + (event.value != 0.0 ? ", by " + degrees_text(event.value) : "");
    case RecordedEventKind::at_rest:
      return "at rest";
    case RecordedEventKind::takes_hold:
      return "a hand takes hold " + place_text(Nominal{event.value}, units) + " above the floor, to roll the stair";
    case RecordedEventKind::binds:
      return "the hooks bind: a push of " + force_text(AtMost{event.value}, units) + " along the rail moves nothing";
    case RecordedEventKind::stays:
      return "a push of " + force_text(AtMost{event.value}, units) + " along the rail is too weak";
    case RecordedEventKind::leaves_pipe:
      return "a hook rolls off the pipe's end, with the stair at station " + place_text(Nominal{event.value}, units);
    case RecordedEventKind::stands:
      return "the stair stands at station " + place_text(Nominal{event.value}, units);
    case RecordedEventKind::brought:
      return "taken to station " + place_text(Nominal{event.value}, units) + ", which it did not reach by itself";
  }
  return {};
}

bool is_trouble(const RecordedEvent& event) {
  switch (event.kind) {
    case RecordedEventKind::touch:
      return event.other != "floor" || event.value > kLands;
    case RecordedEventKind::zone_entered:
    case RecordedEventKind::slack_ends:
    case RecordedEventKind::let_go:
    case RecordedEventKind::line_broken:
    case RecordedEventKind::hooks_lift:
    case RecordedEventKind::strays:
    case RecordedEventKind::binds:
    case RecordedEventKind::stays:
    case RecordedEventKind::leaves_pipe:
    case RecordedEventKind::brought:
    case RecordedEventKind::gives_up:
    case RecordedEventKind::turns_over:
      return true;
    default:
      return false;
  }
}

bool has_trouble(const Recording& recording) {
  if (recording.account) return !recording.account->troubles.empty();
  return std::any_of(recording.events.begin(), recording.events.end(),
                     [](const RecordedEvent& event) { return is_trouble(event); });
}

bool graver(const RecordedEvent& a, const RecordedEvent& b) {
  const auto rank = [](const RecordedEvent& event) {
    return std::find(kGravest.begin(), kGravest.end(), event.kind) - kGravest.begin();
  };
  return rank(a) != rank(b) ? rank(a) < rank(b) : std::abs(a.value) > std::abs(b.value);
}

std::optional<double> lowers_away_at(const Recording& recording) {
  for (const RecordedEvent& event : recording.events)
    if (event.kind == RecordedEventKind::lowers_away) return event.time;
  return std::nullopt;
}

double drawn_until(const Recording& recording) {
  constexpr std::array kComesOtherwise{RecordedEventKind::let_go, RecordedEventKind::line_broken,
                                       RecordedEventKind::turns_over, RecordedEventKind::gives_up};
  const auto down = lowers_away_at(recording);
  const bool otherwise = std::any_of(recording.events.begin(), recording.events.end(), [&](const RecordedEvent& event) {
    return std::count(kComesOtherwise.begin(), kComesOtherwise.end(), event.kind) > 0;
  });
  return down && !otherwise ? *down : ends_at(recording);
}

std::vector<RecordedEvent> told_events(const Recording& recording) {
  std::vector<RecordedEvent> told;
  std::copy_if(recording.events.begin(), recording.events.end(), std::back_inserter(told), worth_telling);
  return told;
}

std::optional<RecordedEvent> last_told(const Recording& recording, double time) {
  std::optional<RecordedEvent> last;
  for (const RecordedEvent& event : recording.events) {
    if (event.time <= time && worth_telling(event)) last = event;
  }
  return last;
}

double ends_at(const Recording& recording) {
  const double last = recording.frames.back().time;
  return recording.events.empty() ? last : std::max(last, recording.events.back().time);
}

bool brought_before(const Recording& recording, std::size_t frame) {
  if (frame == 0) return false;
  const RecordedFrame &before = recording.frames.at(frame - 1), &after = recording.frames.at(frame);
  return std::any_of(recording.events.begin(), recording.events.end(), [&](const RecordedEvent& event) {
    return event.kind == RecordedEventKind::brought && event.time >= before.time && event.time <= after.time &&
           std::abs(after.station - event.value) < kThere && std::abs(before.station - event.value) > kThere;
  });
}

std::size_t frame_at(const Recording& recording, double time) {
  const auto later = std::upper_bound(recording.frames.begin(), recording.frames.end(), time,
                                      [](double t, const RecordedFrame& frame) { return t < frame.time; });
  return later == recording.frames.begin() ? 0 : static_cast<std::size_t>(later - recording.frames.begin()) - 1;
}

std::string frame_words(const Model& model, const Recording& recording, const RecordedFrame& frame,
                        DisplayUnits units) {
  const auto down = lowers_away_at(recording);
  std::string text = time_text(Nominal{frame.time});
  if (frame.move >= 0 && frame.move < static_cast<int>(model.moves.size()))
    text += ", " + std::string(move_name(model.moves[static_cast<std::size_t>(frame.move)].kind)) +
            (down && frame.time >= *down ? " backwards" : "");
  return text + (frame.hoist.on ? ", line " + force_text(AtMost{frame.hoist.pull}, units) : "");
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
  const std::string asked = recording.options.empty() ? "" : " with " + recording.options;
  return "REHEARSED: " + std::string(works(recording) ? "the procedure" : "the standing stair") + asked + ", " +
         time_text(Nominal{time}) + "; " + counted(touches, "touch", "touches") + greatest_forces(recording, units) +
         "." + outcome(recording, units) + " A simulation: it proves no clearance.";
}

std::string account_sentences(const Recording& recording, DisplayUnits units) {
  if (!recording.account)
    return "Recorded in an older format, which kept neither how good the numbers are nor what was found to be wrong: " +
           std::string("record it again to have both.");
  return bounds_sentences(recording.account->bounds, units);
}

std::string taken_for_granted(const Recording& recording) {
  if (!recording.account || recording.account->cautions.empty()) return "";
  return joined(recording.account->cautions, ". ") + ".";
}

std::string recording_cautions() {
  return "A rehearsal is a simulation with a step, frictions that are guessed as ranges, and rigid parts. It shows "
         "what "
         "may happen, not that nothing else can. Clearance is what dryfit proves. Keep people out from under the "
         "stair.";
}

}  // namespace stowpath
