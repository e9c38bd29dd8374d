#include "render/report/hoist_words.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "render/report/hardware_words.h"
#include "render/report/words.h"
#include "sim/hoist/drive_pull.h"
#include "sim/trade/figure.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kFootPound = 1.3558179483314004;  // [N m]

bool imperial(DisplayUnits units) { return units == DisplayUnits::imperial; }

// Whole numbers, and a tenth below ten.
std::string few_digits(Figure figure) { return format_decimal(figure, std::abs(figure.value()) < 9.95 ? 1 : 0); }

std::string newtons_text(Figure newtons) {
  if (std::abs(newtons.value()) >= 1e4) return format_decimal(newtons.in(1e3), 1) + " kN";
  return few_digits(newtons) + " N";
}

std::string quoted_speed(const HoistEffort& effort) {
  const std::string rate = format_decimal(Nominal{effort.input_speed}, 0) + " turns a minute";
  if (effort.speed_given) return rate;
  return rate + (effort.by == PulledBy::crank_winch ? " (our estimate of cranking)" : " (our estimate of a drill)");
}

std::string peak_words(const HoistSubject& subject) {
  const PullReport& pull = subject.pull;
  if (!pull.peak_raising) return "no move is done on the line";
  return "the pull peaks at " + force_text(AtMost{subject.effort.peak}, subject.units) + " at " +
         sample_text(subject.model, pull.samples[*pull.peak_raising]);
}

std::string limits_words(const HoistSubject& subject) {
  const HoistEffort& effort = subject.effort;
  const Figure excess = effort.worst_excess > 0.0 ? Figure(AtMost{effort.worst_excess}) : -AtMost{effort.worst_excess};
  const std::string by = force_text(excess, subject.units);
  if (effort.own_limit) return by + (effort.worst_excess > 0.0 ? " over your own limit" : " under your own limit");
  const auto all = static_cast<long long>(effort.limits.size());
  const std::string figures = counted(all, "figure listed", "figures listed");
  if (effort.exceeded == 0) return by + " under the least of the " + figures;
  return "over " + std::to_string(effort.exceeded) + " of the " + figures + ", the least by " + by;
}

std::string person_words(const HoistSubject& subject, const std::string& work) {
  const HoistEffort& effort = subject.effort;
  if (effort.own_limit) return effort.exceeded == 0 ? "one person can " + work : "it is more than you want to pull";
  const WhoCan who = who_can(effort);
  if (effort.exceeded == 0) return "one person can " + work + ", by every figure listed";
  if (who.weak) return "one person can " + work + ", by the figures for weak and for strong";
  return who.strong ? "a strong person can " + work + ", a weaker one may not"
                    : "one person cannot " + work + " by any figure for the strong";
}

std::string cranked_words(const HoistSubject& subject) {
  const WinchRun& run = *subject.effort.winch;
  return person_words(subject, "crank this up") + ": " +
         force_text(AtMost{run.handle_force.value_or(0.0)}, subject.units) + " on the crank, " + limits_words(subject) +
         "; " + minutes_text(AtMost{run.minutes}) + " at " + quoted_speed(subject.effort) + "; on the line " +
         peak_words(subject);
}

std::string driven_words(const HoistSubject& subject) {
  const WinchRun& run = *subject.effort.winch;
  const std::string wants = torque_text(AtMost{run.torque}, subject.units) + " at " + quoted_speed(subject.effort) +
                            ", " + minutes_text(AtMost{run.minutes}) + "; on the line " + peak_words(subject);
  if (!run.torque_given) return "the drive has to give " + wants + "; what it gives is not said";
  const std::string given = " of its " + torque_text(AtLeast{*run.torque_given}, subject.units);
  return (run.torque > *run.torque_given ? "the drive is too weak" : "the drive can lift this") + given +
         ", the lift asks " + wants;
}

std::string answer_words(const HoistSubject& subject) {
  const HoistEffort& effort = subject.effort;
  if (effort.slips)
    return "the overload device lets go at " + force_text(AtLeast{*subject.scene.hoist->overload}, subject.units) +
           ", before the stair is up: " + peak_words(subject);
  if (effort.verdict == EffortVerdict::cannot) return "hauling does not raise the stair all the way";
  if (effort.by == PulledBy::crank_winch) return cranked_words(subject);
  if (effort.by == PulledBy::powered_winch) return driven_words(subject);
  return person_words(subject, "haul this") + ": " + peak_words(subject) + ", " + limits_words(subject);
}

std::string drill_words(const HoistSubject& subject) {
  if (!subject.effort.drill) return "";
  const WinchRun& run = *subject.effort.drill;
  return " Turned by a drill at " + format_decimal(Nominal{kDrillSpeed}, 0) +
         " turns a minute (our estimate) it takes " + minutes_text(AtMost{run.minutes}) + ", at " +
         torque_text(AtMost{run.torque}, subject.units) + ".";
}

}  // namespace

std::string force_text(Figure newtons, DisplayUnits units) {
  if (!imperial(units)) return newtons_text(newtons);
  return few_digits(newtons.in(kPoundForce)) + " lbf (" + newtons_text(newtons) + ")";
}

std::string force_figures(Figure newtons, DisplayUnits units) {
  return format_decimal(imperial(units) ? newtons.in(kPoundForce) : newtons, 0);
}

std::string_view force_unit(DisplayUnits units) { return imperial(units) ? "lbf" : "N"; }

std::string mass_text(Figure kilograms, DisplayUnits units) {
  return imperial(units) ? format_decimal(kilograms.in(kPound), 1) + " lb" : format_decimal(kilograms, 2) + " kg";
}

std::string torque_text(Figure newton_metres, DisplayUnits units) {
  return imperial(units) ? format_decimal(newton_metres.in(kFootPound), 1) + " ft-lb"
                         : format_decimal(newton_metres, 1) + " Nm";
}

std::string minutes_text(Figure minutes) {
  return minutes.value() < 1.5 ? format_decimal(minutes.in(1.0 / 60.0), 0) + " s" : format_decimal(minutes, 1) + " min";
}

std::string source_text(const Source& source) {
  return std::string(stowpath::status_text(source.status)) + ": " + std::string(source.title);
}

std::string status_text(const std::optional<SourceStatus>& status) {
  return status ? std::string(stowpath::status_text(*status)) : "given";
}

std::string move_text(const Model& model, std::size_t move) {
  const Move& m = model.moves[move];
  return "move " + std::to_string(m.index) + ", " + std::string(move_name(m.kind));
}

std::string sample_text(const Model& model, const PullSample& sample) {
  return pose_text(model.linkage, sample.pose) + " in " + move_text(model, sample.move);
}

std::string_view effort_word(EffortVerdict verdict) {
  switch (verdict) {
    case EffortVerdict::within:
      return "WITHIN";
    case EffortVerdict::over:
      return "OVER";
    case EffortVerdict::cannot:
      return "CANNOT LIFT";
    case EffortVerdict::unknown:
      break;
  }
  return "NOT SAID";
}

bool holds_up(const HoistSubject& subject) { return count_hardware(subject.hardware).too_weak == 0; }

std::string hoist_word(const HoistSubject& subject) {
  const EffortVerdict verdict = subject.effort.verdict;
  return std::string(
      effort_word(verdict == EffortVerdict::within && !holds_up(subject) ? EffortVerdict::over : verdict));
}

std::string hoist_line(const HoistSubject& subject) {
  const std::string weak =
      holds_up(subject) ? "" : "; of its hardware " + hardware_sentence(subject.hardware, subject.units);
  return hoist_word(subject) + ": " + answer_words(subject) + weak + ". " + subject.model.name;
}

std::vector<MovePull> pulls_by_move(const PullReport& report) {
  std::vector<MovePull> moves;
  double first_length = 0.0;
  for (std::size_t i = 0; i < report.samples.size(); ++i) {
    const PullSample& sample = report.samples[i];
    if (moves.empty() || moves.back().move != sample.move) {
      moves.push_back({sample.move, 0.0, 0.0, 0.0, i, 0.0, false});
      first_length = sample.line_length;
    }
    MovePull& move = moves.back();
    if (sample.solvable && sample.hand_raising > move.raising) move.raising = sample.hand_raising, move.peak = i;
    if (sample.holds) move.holding = std::max(move.holding, sample.hand_holding);
    if (sample.lets_down) move.lowering = std::max(move.lowering, sample.hand_lowering);
    move.hauled = first_length - sample.line_length;
    move.slack = move.slack || sample.slack;
  }
  return moves;
}

std::string holding_sentence(const HoistSubject& subject) {
  const std::string friction =
      subject.holding.friction_everywhere
          ? " By the frictions assumed the stair would not run down by itself; do not rely on that."
          : "";
  switch (subject.holding.by) {
    case LetGo::cleat:
      return "The cleat, once the fall is made fast on it; until then nothing but the hand." + friction;
    case LetGo::winch:
    case LetGo::nothing:
    case LetGo::friction:
      break;
  }
  if (subject.effort.winch) {
    std::string text(subject.effort.winch->hold_text);
    text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
    return text + "." + friction;
  }
  return "Nothing: when the hand lets go, the stair comes down. Lead the fall to a cleat, and use it." + friction;
}

std::string haul_sentence(const HoistSubject& subject) {
  const PullReport& pull = subject.pull;
  std::string text = "Line to haul in: " + place_text(AtMost{pull.haul_length}, subject.units) +
                     ". Rope needed: " + place_text(AtMost{pull.rope_needed}, subject.units) + " with " +
                     place_text(Nominal{pull.line.tail}, subject.units) + " of tail and " +
                     place_text(Nominal{pull.line.knot}, subject.units) + " for the knot.";
  if (pull.fold_line) {
    text += " Fold line: " + place_text(AtMost{pull.fold_haul_length}, subject.units) + " to haul in, " +
            place_text(AtMost{pull.fold_rope_needed}, subject.units) + " of rope.";
  }
  if (subject.effort.by != PulledBy::hand) return text;
  return text + " Hand over hand that takes " + minutes_text(AtLeast{subject.effort.hand_minutes.lo}) + " to " +
         minutes_text(AtMost{subject.effort.hand_minutes.hi}) + " without a rest (" +
         std::string(status_text(kHandOverHandSource.status)) + ": " + std::string(kHandOverHandSource.title) + ").";
}

std::string winch_sentence(const HoistSubject& subject) {
  if (!subject.effort.winch) return "";
  const WinchRun& run = *subject.effort.winch;
  std::string text = format_decimal(AtMost{run.turns}, 0) + " turns at " + quoted_speed(subject.effort) + ": " +
                     minutes_text(AtMost{run.minutes}) + " without a rest; " +
                     torque_text(AtMost{run.torque}, subject.units) + " at the input, efficiency " +
                     format_decimal(AtLeast{run.efficiency.share}, 2) + " (" + source_text(run.efficiency.source) +
                     ").";
  text += run.layers_known ? " The line lies in " + counted(run.layers, "layer", "layers") + " on the drum."
                           : " Reckoned as one layer on the drum, whose length is not said: more layers go faster and "
                             "crank harder.";
  return text + drill_words(subject);
}

namespace {

// The pieces that fail when the stair catches, weakest first.
std::vector<const HardwareItem*> pieces_snagged(const HoistSubject& subject) {
  std::vector<const HardwareItem*> weak;
  for (const HardwareItem& item : subject.hardware)
    if (item.where.rfind("caught", 0) == 0 && item.ratio() && *item.ratio() < 1.0) weak.push_back(&item);
  return weak;
}

std::string drive_words(const HoistSubject& subject, const DrivePull& drive) {
  if (!drive.known && !(drive.force > 0.0)) return "how hard its drive pulls is not said";
  const std::string pulls = force_text(AtMost{drive.force}, subject.units);
  if (!drive.known) return drive.how + " pulls " + pulls + " at the line or more";
  return drive.how + " puts up to " + pulls + " on the line" +
         (drive.source ? " (" + source_text(*drive.source) + ")" : "");
}

}  // namespace

std::string snag_sentence(const HoistSubject& subject) {
  const DrivePull drive = drive_pull(subject.scene);
  std::string text = "Should the stair catch on something and the hauling go on, " + drive_words(subject, drive) +
                     ", and the tackle passes it on without loss. ";
  const std::vector<const HardwareItem*> weak = pieces_snagged(subject);
  for (const HardwareItem* item : weak)
    text += (item == weak.front() ? "Too much for: " : ", ") + item->name + " (holds " +
            load_text(item->kind, AtLeast{*item->resistance}, subject.units) + " of " +
            load_text(item->kind, AtMost{item->load}, subject.units) + ")";
  if (!weak.empty()) text += ". ";
  if (weak.empty() && drive.known) text += "No piece whose resistance is known bears less. ";
  if (!weak.empty() || !drive.known)
    text += "What helps: a slipping clutch or a shear pin (hoist.overload), a stop, or a lighter drive. ";
  if (subject.effort.drill)
    text += "A drill on the crank pulls harder than a hand: what it stalls at is not known here.";
  return text;
}

std::string left_out_figures_sentence(const HoistSubject& subject) {
  std::string text;
  for (const UnfitFigure& unfit : subject.effort.left_out)
    text += (text.empty() ? "Not compared with, as they do not fit: " : "; ") +
            force_text(Nominal{unfit.figure.force}, subject.units) + " " + std::string(unfit.figure.posture) + " (" +
            std::string(unfit.why) + ")";
  return text.empty() ? text : text + ".";
}

std::string side_sentence(const HoistSubject& subject) {
  const PullReport& pull = subject.pull;
  if (!pull.peak_side) return "";
  const PullSample& s = pull.samples[*pull.peak_side];
  return "The line pulls the stair by up to " + force_text(AtMost{std::abs(s.side_out)}, subject.units) +
         (s.side_out < 0.0 ? " towards the wall" : " away from the wall") + " and by " +
         force_text(AtMost{std::abs(s.side_along)}, subject.units) + " along the rail, at " +
         sample_text(subject.model, s) + "; the hooks have to take it.";
}

std::string hoist_cautions() {
  return "Slow and steady pulls only: nothing is left over here for starting, jerks or swinging. It approves no "
         "structure: loads hung overhead are for a licensed engineer to accept, and nobody belongs under a stair on "
         "its line.";
}

}  // namespace stowpath
