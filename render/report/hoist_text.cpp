#include <cmath>

#include "render/report/hardware_words.h"
#include "render/report/hoist_report.h"
#include "render/report/hoist_words.h"
#include "render/report/masses_words.h"
#include "render/report/page.h"
#include "render/report/words.h"
#include "render/report/wrap.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

std::string_view answer_code(const HoistSubject& subject) {
  if (!holds_up(subject)) return "1;31";
  if (subject.effort.verdict == EffortVerdict::within) return "1;32";
  return subject.effort.verdict == EffortVerdict::unknown ? "1;33" : "1;31";
}

class Writer {
 public:
  Writer(const HoistSubject& subject, const TextOptions& options)
      : subject_(subject), page_(options.colour), units_(options.units) {}

  std::string text() {
    answer();
    limits();
    pulls();
    page_.section("THE LINE", haul_sentence(subject_));
    page_.section("WHEN THE HAND LETS GO, what holds the stair", holding_sentence(subject_));
    if (subject_.effort.winch) page_.section("THE WINCH", winch_sentence(subject_));
    page_.section("IF THE STAIR CATCHES", snag_sentence(subject_));
    on_the_way();
    changes();
    write_hardware(page_, subject_.hardware, units_);
    write_masses(page_, subject_.weights, units_);
    work();
    assumptions();
    page_.section("LIMITS", hoist_cautions());
    return page_.text();
  }

 private:
  std::string force(Figure newtons) const { return force_figures(newtons, units_); }
  std::string in_unit(const std::string& what) const { return what + ", " + std::string(force_unit(units_)); }

  void answer() { page_.raw(hoist_verdict_text(subject_, page_.colour())); }

  void limits() {
    if (subject_.effort.limits.empty()) return;
    const bool crank = subject_.effort.by == PulledBy::crank_winch;
    Table table;
    table.figures(1);
    table.figures(2);
    table.row({"limit", in_unit("force"), "margin", "", "hands", "for", "source"});
    for (const LimitMargin& m : subject_.effort.limits) {
      table.row({m.limit.name, force(AtLeast{m.limit.force}), force(AtLeast{m.margin}), m.margin < 0.0 ? "OVER" : "",
                 std::string(hands_text(m.limit.hands)), std::string(lasting_text(m.limit.lasting)),
                 source_text(m.limit.source)});
    }
    page_.table(crank ? "AGAINST WHAT PEOPLE DO AT A CRANK, weakest first" : "AGAINST WHAT PEOPLE PULL, weakest first",
                table);
    const std::string left_out = left_out_figures_sentence(subject_);
    if (!left_out.empty()) page_.paragraph(left_out);
    if (subject_.effort.own_limit) page_.paragraph("Your own limit decides; the others are for comparison.");
  }

  void pulls() {
    Table table;
    for (const std::size_t column : {2U, 3U, 4U, 5U}) table.figures(column);
    table.row({"no", "move", in_unit("raise"), "hold", "lower", "line in", "raise peaks at"});
    for (const MovePull& move : pulls_by_move(subject_.pull)) table.row(cells(move));
    page_.table(
        "PULL AT THE " + std::string(subject_.effort.winch ? "DRUM" : "HAND") + ", greatest of each move on the line",
        table);
    const PullReport& pull = subject_.pull;
    const std::string least = force_text(AtLeast{pull.least_friction_peak}, units_);
    const std::string most = force_text(AtMost{pull.most_friction_peak}, units_);
    page_.paragraph("Over the ranges of friction given, the raising peak " +
                    (least == most ? "stays at " + most : "lies between " + least + " and " + most) + ".");
  }

  std::vector<std::string> cells(const MovePull& move) const {
    const Move& m = subject_.model.moves[move.move];
    const PullSample& peak = subject_.pull.samples[move.peak];
    const std::string at = pose_text(subject_.model.linkage, peak.pose);
    return {std::to_string(m.index),
            std::string(move_name(m.kind)),
            force(AtMost{move.raising}),
            force(AtMost{move.holding}),
            force(AtMost{move.lowering}),
            place_text(AtMost{move.hauled}, units_),
            at + (move.slack ? "; the line goes slack" : "")};
  }

  void on_the_way() {
    if (subject_.pull.events.empty() && !subject_.pull.peak_side) return;
    page_.heading("ON THE WAY");
    for (const PullEvent& event : subject_.pull.events) {
      page_.paragraph(std::string(event_text(event.kind)) + ": at " + pose_text(subject_.model.linkage, event.pose) +
                      " in " + move_text(subject_.model, event.move));
    }
    const std::string side = side_sentence(subject_);
    if (!side.empty()) page_.paragraph(side);
  }

  void changes() {
    if (subject_.pull.changes.empty()) return;
    Table table;
    for (const std::size_t column : {1U, 2U, 3U, 4U}) table.figures(column);
    table.row({"with", in_unit("peak"), "less by", "line in", "side pull"});
    for (const PullChange& change : subject_.pull.changes) {
      table.row({change.text, force(AtMost{change.peak}), force(AtLeast{change.benefit}),
                 place_text(AtMost{change.haul_length}, units_), force(AtMost{change.side_pull}),
                 change.lifts ? "" : "does not lift all the way"});
    }
    page_.table("WHAT OTHER RIGGING WOULD ASK, best first", table);
  }

  void work() {
    const WorkBook& work = subject_.pull.work;
    std::string text = "The stair gains " + joules(work.gain) + ". The hand does " + joules(work.hand);
    if (work.fold_hand != 0.0) text += ", at the fold line " + joules(work.fold_hand);
    if (std::abs(work.turning) > 0.5) text += ", whoever turns the sections " + joules(work.turning);
    text += "; friction takes " + joules(work.lost());
    std::string places;
    for (const PullLoss& loss : work.losses) {
      if (loss.energy < 0.5) continue;
      places += (places.empty() ? ": " : ", ") + loss.place + " " + joules(loss.energy);
    }
    page_.section("WORK", text + places + ".");
  }

  static std::string joules(double energy) { return format_decimal(AtMost{energy}, 0) + " J"; }

  void assumptions() {
    page_.heading("TAKEN FOR GRANTED");
    for (const std::string& line : subject_.pull.assumptions) page_.paragraph(line);
  }

  const HoistSubject& subject_;
  ReportPage page_;
  DisplayUnits units_;
};

}  // namespace

std::string hoist_verdict_text(const HoistSubject& subject, bool colour) {
  return answer_text(hoist_line(subject), hoist_word(subject), answer_code(subject), colour);
}

std::string hoist_text(const HoistSubject& subject, const TextOptions& options) {
  return Writer(subject, options).text();
}

}  // namespace stowpath
