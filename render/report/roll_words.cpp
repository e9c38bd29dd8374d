#include <algorithm>
#include <cmath>
#include <numbers>

#include "render/report/hoist_words.h"
#include "render/report/rehearsal_report.h"
#include "render/report/roll_report.h"
#include "render/report/words.h"
#include "sim/mechanism/room_parts.h"
#include "sim/rehearsal/trouble.h"
#include "sim/trade/figure.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

auto& runs_of(const RollSubject& subject) { return subject.report.runs; }

bool never_moves(const RollRun& run) { return !run.push_needed; }

long long binding(const RollSubject& subject) {
  return std::count_if(runs_of(subject).begin(), runs_of(subject).end(), never_moves);
}

long long moving(const RollSubject& subject) {
  return std::count_if(runs_of(subject).begin(), runs_of(subject).end(), [](const RollRun& run) { return run.rolls; });
}

// First obstacle that is no stop of the rail.
const RollStop* bump_of(const RollSubject& subject) {
  for (const RollRun& run : runs_of(subject)) {
    for (const RollStop& stop : run.stops) {
      if (stop.thing != kRailStop) return &stop;
    }
  }
  return nullptr;
}

std::string towards(double along) { return along < 0.0 ? "towards lower stations" : "towards higher stations"; }

std::string push_words(const RollSubject& subject) {
  const PushOptions& asked = subject.report.asked;
  std::string text = "pushed along the rail " + towards(asked.force) + " with " +
                     force_text(Nominal{std::abs(asked.force)}, subject.units) + ", " +
                     place_text(Nominal{asked.height - subject.model.floor_level}, subject.units) + " above the floor";
  if (asked.across != 0.0)
    text += " and " + place_text(Nominal{std::abs(asked.across)}, subject.units) + " from the stair's middle " +
            towards(asked.across);
  if (asked.turned != 0.0) text += ", turned out by " + format_decimal(Nominal{asked.turned / kDegree}, 0) + "°";
  return text;
}

std::string friction_words(const Interval& range) {
  return "a friction of hook on pipe from " + friction_text(Nominal{range.lo}) + " to " +
         friction_text(Nominal{range.hi});
}

std::string needs_words(const RollSubject& subject) {
  const auto& easy = runs_of(subject).front().push_needed;
  const auto& hard = runs_of(subject).back().push_needed;
  if (!easy || !hard) return "";
  return "it takes " + force_text(AtLeast{*easy}, subject.units) + " to " + force_text(AtMost{*hard}, subject.units);
}

std::string roller_sentence(const SpanStair& stair) {
  if (!stair.roller) return "";
  if (stair.roller->side == RollerSide::crown)
    return " The hooks' rollers carry the stair's weight, and make the push lighter; what presses the hooks sideways "
           "bears on "
           "the hooks themselves, so that they jam from the same friction as without rollers.";
  if (stair.roller->side == RollerSide::below) return " The hooks' rollers lie under the pipe and carry nothing.";
  return " The hooks' rollers lie at the pipe's flank: of the two outermost hooks one rolls and the other slides, "
         "whichever "
         "way the stair racks, and the friction is that of the one that slides.";
}

std::string answer(const RollSubject& subject) {
  const std::string range = friction_words(subject.scene.friction.hook);
  if (binding(subject) == 3) return "BINDS: " + push_words(subject) + " the hooks jam, over " + range;
  if (binding(subject) > 0)
    return "MAY BIND: " + push_words(subject) + " the hooks jam from a friction of about " +
           friction_text(AtLeast{subject.report.jam_friction}) + " on, and the scene allows " +
           friction_text(Nominal{subject.scene.friction.hook.lo}) + " to " +
           friction_text(Nominal{subject.scene.friction.hook.hi});
  if (moving(subject) == 0) return "STAYS: " + push_words(subject) + " it does not move: " + needs_words(subject);
  if (moving(subject) < 3) return "MAY STAY: " + push_words(subject) + ", where " + needs_words(subject);
  return "ROLLS: " + push_words(subject) + ", over " + range + ": " + needs_words(subject);
}

}  // namespace

std::string friction_text(Figure friction) { return format_decimal(friction, 2); }

bool rolls_freely(const RollSubject& subject) { return troubles(subject.report).empty(); }

std::string roll_line(const RollSubject& subject) {
  const RollStop* bump = bump_of(subject);
  return answer(subject) + (bump ? "; " + stop_sentence(*bump, subject.units) : "") + ". " + subject.model.name;
}

std::string stop_sentence(const RollStop& stop, DisplayUnits units) {
  const std::string where =
      " at station " + place_text(Nominal{stop.station}, units) + ", at " + speed_text(AtMost{stop.speed}, units);
  if (stop.part.empty()) return "the hooks leave the pipe's end with the stair" + where;
  return stop.part + " meets " + stop.thing + " with the stair" + where;
}

std::string racking_sentences(const RollSubject& subject) {
  const RollReport& report = subject.report;
  std::string text = "The stair leans " + format_decimal(Nominal{subject.model.working_lean / kDegree}, 1) +
                     "°, so the push passes " + place_text(AtMost{std::abs(report.offset)}, subject.units) +
                     " out of the pipe's line; hooks " + place_text(Nominal{report.stair.spacing()}, subject.units) +
                     " apart jam there from a friction of " + friction_text(AtLeast{report.jam_friction}) +
                     " on, however hard one pushes. ";
  const double up = report.free_height - subject.model.floor_level;
  text += up > 0.0 ? "From " + place_text(AtMost{up}, subject.units) +
                         " above the floor up, a push along the rail jams at no "
                         "friction up to " +
                         friction_text(Nominal{subject.scene.friction.hook.hi}) + "."
                   : "At no height does a push along the rail jam up to a friction of " +
                         friction_text(Nominal{subject.scene.friction.hook.hi}) + ".";
  text += roller_sentence(report.stair);
  if (binding(subject) > 0) {
    text += " While it is jammed, a push of " + force_text(AtLeast{report.tips_when_jammed}, subject.units) +
            " at that height lifts one side of the stair; with a caster blocked " +
            force_text(AtLeast{report.tips_when_blocked}, subject.units) + " does.";
  }
  return text;
}

std::string roll_bounds_sentences(const RollSubject& subject) {
  double coasting = 0.0, energy = 0.0;
  for (const RollRun& run : runs_of(subject)) {
    coasting = std::max(coasting, run.coasting_error);
    energy = std::max(energy, run.energy_gained);
  }
  return "Step 1/" + format_decimal(Nominal{1.0 / subject.report.asked.step}, 0) +
         " s. At half the step the coasting changes by " + up_to_text({coasting}, subject.units) +
         ". Energy that came from nowhere: " + energy_bound_text({energy}, subject.units, 4) +
         ". Stops are met within " +
         format_small_length(AtMost{2.0 * kSpanSkin + subject.report.asked.pace * subject.report.asked.step},
                             subject.units) +
         ". The push needed is found to " + force_text(AtMost{kPushFound}, subject.units) +
         "; \"by moments\" is statics alone, with casters that hold nothing sideways.";
}

std::string roll_cautions() {
  return "A simulation with frictions that are guessed as ranges: it shows what may happen, and proves no clearance; "
         "dryfit does, and looks at the keep-clear zones too, which are left out here. The stair is rigid and stands "
         "on an even floor; casters are rigid, point along the rail and do "
         "not swivel; start-up of a caster that has stood long (2 to 2.5 times its rolling, from memory) is left out.";
}

}  // namespace stowpath
