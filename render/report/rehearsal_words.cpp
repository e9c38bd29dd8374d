#include <algorithm>
#include <cmath>

#include "render/report/hoist_words.h"
#include "render/report/page.h"
#include "render/report/rehearsal_report.h"
#include "render/report/words.h"
#include "render/report/wrap.h"
#include "sim/rehearsal/side_world.h"
#include "sim/trade/figure.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kFootPound = 1.3558179483314004;    // [J]
constexpr double kSettles = 0.05;                    // a foot that comes down slower is set down [m/s]
constexpr double kLands = 0.3;                       // and faster, drops [m/s]
constexpr double kLifts = 1e-4;                      // hooks that lift less only tremble [m]
constexpr double kStandsAgain = 0.0174532925199433;  // a degree [rad]
constexpr double kFootAgain = 0.03;                  // [m]
constexpr double kSwings = 0.0872664625997165;       // 5 degrees [rad]

double greatest_landing(const RehearsalReport& report) {
  double speed = 0.0;
  for (const TouchRun& run : report.landings) speed = std::max(speed, run.speed);
  return speed;
}

double greatest_lift(const RehearsalReport& report) {
  double lift = 0.0;
  for (const HookSpell& spell : report.hooks_off) lift = std::max(lift, spell.lift);
  return lift;
}

double stalled(const RehearsalReport& report) {
  double seconds = 0.0;
  for (const MoveRun& move : report.moves) seconds += move.stalled;
  return seconds;
}

double greatest_loose(const RehearsalReport& report) {
  double swing = 0.0;
  for (const LooseRun& run : report.loose) swing = std::max(swing, run.swings);
  return swing;
}

bool came_off(const RehearsalReport& report) {
  return std::any_of(report.hooks_off.begin(), report.hooks_off.end(),
                     [](const HookSpell& spell) { return spell.off; });
}

// It does not move when what held it is gone.
bool stays(const Aftermath& after) { return after.at_rest && after.top_speed < kSettles; }

bool as_it_stood(const StandsAgain& again) {
  return again.hooks_on_pipe && again.lean < kStandsAgain && again.foot < kFootAgain;
}

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
  return "Then it stands again: its leans within " + format_degrees(again.lean, 2) + " of where they were, the foot " +
         format_small_length(again.foot, units) + " and the hooks " + format_small_length(again.hooks, units) +
         " off, " + (again.hooks_on_pipe ? "held by the pipe." : "not held by the pipe.");
}

// What went wrong, most serious first.
std::vector<std::string> troubles(const RehearsalSubject& subject) {
  const RehearsalReport& report = subject.report;
  std::vector<std::string> found;
  if (report.refused) found.push_back("a rope is too stiff for the physics world, and nothing was rehearsed");
  if (report.aftermath && !report.aftermath->nothing)
    found.push_back(stays(*report.aftermath) ? report.aftermath->cause + ", and stays up for now"
                                             : report.aftermath->cause + " and the foot reaches " +
                                                   speed_text(report.aftermath->top_speed, subject.units));
  if (!report.gave_up.empty()) found.push_back("not carried through: " + report.gave_up);
  if (report.again && !as_it_stood(*report.again)) found.push_back("the stair does not stand again as it stood");
  if (came_off(report)) found.push_back("the hooks come off the pipe");
  for (std::string& trouble : roll_troubles(subject)) found.push_back(std::move(trouble));
  if (!report.touches.empty())
    found.push_back(
        counted(static_cast<long long>(report.touches.size()), "pair of parts touches", "pairs of parts touch"));
  if (!report.zones.empty())
    found.push_back(counted(static_cast<long long>(report.zones.size()), "part enters a keep-clear zone",
                            "parts enter a keep-clear zone"));
  if (stalled(report) > 0.0) found.push_back("the crew cannot haul for " + seconds_text(stalled(report)));
  if (greatest_lift(report) > kLifts && !came_off(report))
    found.push_back("the hooks lift " + format_small_length(greatest_lift(report), subject.units) + " off the pipe");
  if (!report.slack.empty())
    found.push_back(
        counted(static_cast<long long>(report.slack.size()), "slack spell of the line", "slack spells of the line"));
  if (greatest_loose(report) > kSwings)
    found.push_back("a section swings by " + format_degrees(greatest_loose(report)) + " when its pin is pulled");
  if (greatest_landing(report) > kLands)
    found.push_back("the foot strikes the floor at " + speed_text(greatest_landing(report), subject.units));
  return found;
}

std::string struck(const Aftermath& after, DisplayUnits units) {
  if (after.first_hit.empty()) return "Nothing struck anything at more than a tenth of a metre a second.";
  return seconds_text(after.hit_time) + " later the " + after.first_hit + " strikes the " + after.first_other + " at " +
         speed_text(after.hit_speed, units) + ", a stroke of " + energy_text(after.hit_energy, units) + ".";
}

std::string ends(const Aftermath& after) {
  const std::string against = after.stopped_by.empty() ? "hangs free" : "lies against: " + after.stopped_by;
  if (after.at_rest) return "After " + seconds_text(after.ends - after.begins) + " it is at rest and " + against + ".";
  return "After " + seconds_text(after.ends - after.begins) + " it still moves; nothing has stopped it for good.";
}

std::string beneath(const Aftermath& after, DisplayUnits units) {
  if (after.under.empty()) return "No moving part came lower than a head.";
  std::string text = "On the way it sweeps, lower than a head, from " +
                     place_text(std::max(0.0, after.under.lo), units) + " to " + place_text(after.under.hi, units) +
                     " out, stations " + place_text(after.under_stations.lo, units) + " to " +
                     place_text(after.under_stations.hi, units) + ": whoever stands there is struck.";
  if (after.hand_under) text += " The place where the line is pulled lies in it.";
  return text;
}

}  // namespace

std::string speed_text(double speed, DisplayUnits units) {
  return units == DisplayUnits::metric ? format_decimal(speed, 2) + " m/s" : format_decimal(speed / kFoot, 1) + " ft/s";
}

std::string energy_text(double joules, DisplayUnits units) {
  const double shown = units == DisplayUnits::metric ? joules : joules / kFootPound;
  return format_decimal(shown, shown < 10.0 ? 1 : 0) + (units == DisplayUnits::metric ? " J" : " ft-lb");
}

std::string seconds_text(double seconds) { return format_decimal(seconds, seconds < 1.0 ? 2 : 1) + " s"; }

bool worth_telling(const RecordedEvent& event) {
  return event.kind != RecordedEventKind::touch || event.other != "floor" || event.value > kSettles;
}

bool has_trouble(const RehearsalSubject& subject) { return !troubles(subject).empty(); }

std::string rehearsal_line(const RehearsalSubject& subject) {
  const auto found = troubles(subject);
  const std::string after = subject.model.name.empty() ? "" : ". " + subject.model.name;
  if (!found.empty()) return "TROUBLE: " + joined(found, "; ") + after;
  return "UNEVENTFUL: in " + seconds_text(subject.report.seconds) +
         " nothing was seen to touch, go slack or leave the pipe; that proves no clearance, a dry fit does" + after;
}

std::string rehearsal_verdict_text(const RehearsalSubject& subject, bool colour) {
  const std::string line = rehearsal_line(subject);
  return answer_text(line, line.substr(0, line.find(':')), has_trouble(subject) ? "1;31" : "1", colour);
}

std::string aftermath_sentences(const RehearsalSubject& subject) {
  const Aftermath& after = *subject.report.aftermath;
  const std::string start = "At " + seconds_text(after.begins) + " " + after.cause;
  if (after.nothing) return start + ". What holds: " + after.stopped_by + ".";
  if (stays(after))
    return start + ". It stays as it is, for now: it lies against " +
           (after.stopped_by.empty() ? "nothing" : after.stopped_by) + ". A person on it or a push can change that.";
  std::string text = start + ". The foot reaches " + speed_text(after.top_speed, subject.units) + ", the stair " +
                     energy_text(after.energy, subject.units) + ". " + struck(after, subject.units) + " " + ends(after);
  if (after.turns_over)
    text +=
        " Its hooks went up off the pipe, and it turned by " + format_degrees(after.turned) +
        " more: the pick holds it nearer the rail than its weight hangs, and only the hooks' curl could hold it down.";
  if (after.hooks_left && !after.turns_over) text += " The hooks come off the pipe.";
  return text + " " + beneath(after, subject.units);
}

std::string way_down_sentences(const RehearsalSubject& subject) {
  const RehearsalReport& report = subject.report;
  const double foot = greatest_foot_pull(report);
  std::string text;
  const auto add = [&](const std::string& sentence) { text += (text.empty() ? "" : " ") + sentence; };
  if (report.moves.empty() || !report.moves.back().back) return text;
  if (greatest_pull(report, true) > 0.0)
    add("The hand holds back up to " + force_text(greatest_pull(report, true), subject.units) +
        ", where it hauled up to " + force_text(greatest_pull(report, false), subject.units) + " on the way up.");
  if (foot > 0.0)
    add("Someone draws the foot out along the floor with up to " + force_text(foot, subject.units) +
        ", under a stair on its line: with a hook or a rope, from beside it.");
  if (report.again) add(again_text(*report.again, subject.units));
  if (!report.gave_up.empty())
    add("It is not carried through: " + report.gave_up + ". The stair is left as it is then.");
  return text;
}

std::string bounds_sentences(const RehearsalSubject& subject) {
  const RehearsalBounds& bounds = subject.report.bounds;
  std::string text = "Step 1/" + format_decimal(1.0 / bounds.step, 0) + " s. Energy from nowhere: at most " +
                     format_decimal(bounds.energy_gain, 2) + " J, beside " + format_decimal(bounds.energy_scale, 0) +
                     " J that came and went.";
  if (bounds.compared)
    text +=
        " Run again at half the step, peak pulls differ by up to " + format_decimal(bounds.pull, 1) +
        " N, leans at the moves' ends by " + format_degrees(bounds.lean, 2) +
        (bounds.swing > 0.0 ? " (of what still swings there the middle of its swing, whose width differs by up to " +
                                  format_degrees(bounds.swing, 2) + ")"
                            : "") +
        (subject.report.rolls.empty() ? "" : ", pushes along the rail by " + format_decimal(bounds.push, 1) + " N") +
        (subject.report.aftermath ? ", the foot's greatest speed by " + format_decimal(bounds.speed, 3) + " m/s" : "") +
        ".";
  return text + " Parts seen to touch were at most " + format_decimal(1e3 * std::max(0.0, bounds.touch_gap), 2) +
         " mm apart by exact distance; the physics world is allowed " + format_decimal(1e3 * kWorldSkin, 1) + " mm.";
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
