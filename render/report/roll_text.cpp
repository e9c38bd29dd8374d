#include <algorithm>
#include <cmath>
#include <numbers>

#include "render/report/hoist_words.h"
#include "render/report/page.h"
#include "render/report/rehearsal_report.h"
#include "render/report/roll_report.h"
#include "render/report/words.h"
#include "render/report/wrap.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

class Writer {
 public:
  Writer(const RollSubject& subject, const TextOptions& options)
      : subject_(subject), page_(options.colour), units_(options.units) {}

  std::string text() {
    page_.raw(roll_verdict_text(subject_, page_.colour()));
    runs();
    page_.section("WHY", racking_sentences(subject_));
    stops();
    page_.section("TAKEN FOR GRANTED", assumed());
    page_.section("NUMBERS", roll_bounds_sentences(subject_));
    page_.section("LIMITS", roll_cautions());
    return page_.text();
  }

 private:
  std::string push_text(const std::optional<double>& push) const {
    return push ? force_text(AtMost{*push}, units_) : "binds";
  }

  void runs() {
    Table table;
    for (std::size_t column = 0; column < 7; ++column) table.figures(column);
    table.row({"hook", "floor", "push needed", "by moments", "yaws", "foot aside", "coasts from a walk"});
    for (const RollRun& run : subject_.report.runs) {
      table.row({friction_text(Nominal{run.friction.hook}), friction_text(Nominal{run.friction.floor}),
                 push_text(run.push_needed), push_text(run.push_by_moments),
                 format_decimal(AtMost{run.yaw / kDegree}, 1) + "°",
                 format_small_length(AtMost{run.foot_aside}, units_),
                 run.rolls ? place_text(AtMost{run.coasting}, units_) : "-"});
    }
    page_.table("BY FRICTION of hook on pipe and caster on floor, easy to hard", table);
  }

  // Each thing once, with the fastest that it is met.
  void stops() {
    std::vector<RollStop> met;
    for (const RollRun& run : subject_.report.runs) {
      for (const RollStop& stop : run.stops) add(met, stop);
    }
    std::string text;
    for (const RollStop& stop : met) text += (text.empty() ? "Pushed on, " : "; ") + stop_sentence(stop, units_);
    page_.section("WHAT IT RUNS INTO", met.empty() ? "It does not move." : text + ".");
  }

  static void add(std::vector<RollStop>& met, const RollStop& stop) {
    for (RollStop& known : met) {
      if (known.thing != stop.thing || std::abs(known.station - stop.station) > 0.01) continue;
      if (stop.speed > known.speed) known = stop;
      return;
    }
    met.push_back(stop);
  }

  std::string assumed() const {
    const SpanStair& stair = subject_.report.stair;
    double hooks = 0.0, casters = 0.0;
    for (const SpanHook& hook : stair.hooks) hooks += hook.load;
    for (const SpanCaster& caster : stair.casters) casters += caster.load;
    return "The stair weighs " + mass_text(Nominal{stair.mass}, units_) + "; its hooks carry " +
           force_text(AtMost{hooks}, units_) + ", its casters " + force_text(AtMost{casters}, units_) +
           ". It starts at station " + place_text(Nominal{subject_.report.start}, units_) +
           "; the hand presses harder over " + seconds_text(Nominal{kPressing}) + ", walks at " +
           speed_text(Nominal{subject_.report.asked.pace}, units_) +
           " and holds nothing back. Casters roll against an arm of " +
           format_small_length(Nominal{kCasterArm.lo}, units_) + " to " +
           format_small_length(Nominal{kCasterArm.hi}, units_) + " (" + source_text(kCasterArmSource) + ").";
  }

  const RollSubject& subject_;
  ReportPage page_;
  DisplayUnits units_;
};

}  // namespace

std::string roll_verdict_text(const RollSubject& subject, bool colour) {
  const std::string line = roll_line(subject);
  return answer_text(line, line.substr(0, line.find(':')), rolls_freely(subject) ? "1;32" : "1;31", colour);
}

std::string roll_text(const RollSubject& subject, const TextOptions& options) {
  return Writer(subject, options).text();
}

}  // namespace stowpath
