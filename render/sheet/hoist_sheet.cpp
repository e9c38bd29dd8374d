#include "render/sheet/hoist_sheet.h"

#include <algorithm>
#include <numbers>

#include "render/report/hoist_words.h"
#include "render/report/words.h"
#include "render/sheet/plot.h"
#include "render/sheet/plot_sheet.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

const Pen kRaising{Ink::line, kHeavy}, kHolding{Ink::blue, kMedium}, kLowering{Ink::soft, kMedium, Dash::hidden};
const Pen kLimit{Ink::red, kThin, Dash::chain};

class Sheet {
 public:
  explicit Sheet(const HoistSubject& subject)
      : subject_(subject),
        sheet_(subject.units, "Hoist", subject.model.name, answer(subject),
               subject.effort.verdict == EffortVerdict::within && holds_up(subject)) {}

  DisplayList drawn() {
    notes();
    if (!subject_.pull.samples.empty()) pulls();
    return std::move(sheet_).drawn();
  }

 private:
  // The scene's name stands in the title block.
  static std::string answer(const HoistSubject& subject) {
    const std::string line = hoist_line(subject);
    return line.substr(0, line.size() - subject.model.name.size() - 1);
  }

  double shown(double newtons) const {
    return subject_.units == DisplayUnits::imperial ? newtons / kPoundForce : newtons;
  }

  void pulls() {
    lay_out();
    DisplayList& list = sheet_.list();
    list.open("pull", "Pull at the hand against lean");
    draw_axes(list, sheet_.labels(), plot_);
    curve(&PullSample::hand_lowering, &PullSample::lets_down, kLowering);
    curve(&PullSample::hand_holding, &PullSample::holds, kHolding);
    curve(&PullSample::hand_raising, &PullSample::solvable, kRaising);
    limits();
    marks();
    const std::vector<LegendEntry> legend{
        {"raising", kRaising}, {"holding, no friction", kHolding}, {"lowering", kLowering}, {"limits", kLimit}};
    draw_legend(list, sheet_.labels(), {plot_.box.least.x, plot_.box.greatest.y + 15.5}, legend);
    list.close();
  }

  void lay_out() {
    const PaperBox room = sheet_.plots();
    plot_.box = {{room.least.x + 13.0, room.least.y + 6.0}, {room.greatest.x - 3.0, room.greatest.y - 18.0}};
    Interval leans{1e9, -1e9};
    for (const PullSample& s : subject_.pull.samples) {
      leans = {std::min(leans.lo, s.pose.lean / kDegree), std::max(leans.hi, s.pose.lean / kDegree)};
    }
    if (leans.hi - leans.lo < 1.0) leans = {leans.lo - 1.0, leans.hi + 1.0};
    plot_.x = round_axis(leans.lo, leans.hi, 10, "lean of the upper section, degrees from plumb");
    const std::string unit(force_unit(subject_.units));
    const std::string where = subject_.effort.winch ? "line's pull at the drum, " : "pull at the hand, ";
    plot_.y = round_axis(0.0, 1.12 * shown(highest()), 10, where + unit);
  }

  // The greatest pull, and the next limit above it, so that the room left is seen.
  double highest() const {
    double most = std::max(1.0, subject_.effort.peak);
    if (subject_.pull.peak_holding) most = std::max(most, pull()[*subject_.pull.peak_holding].hand_holding);
    if (subject_.effort.winch) return most;
    for (const LimitMargin& m : subject_.effort.limits) {
      if (m.limit.force > most) return std::min(m.limit.force, 3.0 * most);
    }
    return most;
  }

  // Each move by itself, and only where the force means something: between two of them the line may hang slack.
  void curve(double PullSample::*force, bool PullSample::*means, const Pen& pen) {
    std::vector<Vec2> values;
    std::size_t move = 0;
    for (const PullSample& s : subject_.pull.samples) {
      if (!values.empty() && (s.move != move || !(s.*means))) flush(values, pen);
      move = s.move;
      if (s.*means) values.push_back({s.pose.lean / kDegree, shown(std::max(0.0, s.*force))});
    }
    flush(values, pen);
  }

  void flush(std::vector<Vec2>& values, const Pen& pen) {
    draw_curve(sheet_.list(), plot_, values, pen);
    for (Vec2& value : values) value = plot_(value.x, value.y);
    sheet_.labels().avoid(values, false);
    values.clear();
  }

  // Levels too close for a line of lettering each share one.
  void limits() {
    if (subject_.effort.winch) return;
    const std::vector<LimitMargin>& all = subject_.effort.limits;
    for (std::size_t i = 0; i < all.size();) {
      std::size_t last = i;
      while (last + 1 < all.size() && close(all[i].limit.force, all[last + 1].limit.force)) ++last;
      for (; i < last; ++i) level(all[i].limit.force, "");
      level(all[last].limit.force, limit_words(all[last].limit));
      i = last + 1;
    }
  }

  bool close(double below, double above) const {
    return plot_(0.0, shown(below)).y - plot_(0.0, shown(above)).y < kNotes + 1.4;
  }

  void level(double force, const std::string& words) {
    draw_level(sheet_.list(), sheet_.labels(), plot_, shown(force), words, kLimit);
  }

  // What stands as near below is named in the notes.
  std::string limit_words(const PersonLimit& limit) const {
    const auto near = std::count_if(subject_.effort.limits.begin(), subject_.effort.limits.end(), [&](const auto& m) {
      return m.limit.force <= limit.force && close(m.limit.force, limit.force);
    });
    const std::string more = near > 1 ? " and " + std::to_string(near - 1) + " just below" : "";
    const std::string figures = ", " + force_text(AtLeast{limit.force}, subject_.units) + more;
    const bool fits = text_width(limit.name + figures, kNotes) < plot_.box.greatest.x - plot_.box.least.x - 4.0;
    return (fits ? limit.name : limit.name.substr(0, limit.name.find(" ("))) + figures;
  }

  void marks() {
    DisplayList& list = sheet_.list();
    const PullReport& pull = subject_.pull;
    if (pull.peak_raising) {
      const PullSample& s = pull.samples[*pull.peak_raising];
      draw_mark(list, sheet_.labels(), plot_, {s.pose.lean / kDegree, shown(s.hand_raising)},
                "peak " + force_text(AtMost{s.hand_raising}, subject_.units), Ink::red);
    }
    for (const MovePull& move : pulls_by_move(pull)) move_label(move);
  }

  // At the middle of each move's samples.
  void move_label(const MovePull& move) {
    const auto first =
        std::find_if(pull().begin(), pull().end(), [&](const PullSample& s) { return s.move == move.move; });
    const auto last = std::find_if(first, pull().end(), [&](const PullSample& s) { return s.move != move.move; });
    const PullSample& s = *(first + (last - first) / 2);
    const Vec2 at = plot_(s.pose.lean / kDegree, shown(std::max(0.0, s.hand_raising)));
    const Move& m = subject_.model.moves[move.move];
    sheet_.labels().place(
        sheet_.list(),
        {at, std::to_string(m.index) + " " + std::string(move_name(m.kind)), kNotes, Anchor::start, Ink::soft}, at,
        grown(plot_.box, -1.0));
  }

  void notes() {
    sheet_.cautions(hoist_cautions());
    sheet_.note_heading("The line");
    sheet_.note(haul_sentence(subject_));
    sheet_.note_heading("When the hand lets go");
    sheet_.note(holding_sentence(subject_));
    if (subject_.effort.winch) {
      sheet_.note_heading("The winch");
      sheet_.note(winch_sentence(subject_));
    }
    if (!subject_.pull.changes.empty()) {
      sheet_.note_heading("What other rigging would ask");
      for (const PullChange& change : subject_.pull.changes) {
        sheet_.note(change.text + ": " + force_text(AtMost{change.peak}, subject_.units) +
                    (change.lifts ? "" : ", does not lift all the way"));
      }
    }
    people();
  }

  void people() {
    if (subject_.effort.limits.empty()) return;
    sheet_.note_heading(subject_.effort.by == PulledBy::hand ? "What people pull" : "What people do at a crank");
    for (const LimitMargin& m : subject_.effort.limits) {
      sheet_.note(force_text(AtLeast{m.limit.force}, subject_.units) + "  " + m.limit.name + " (" +
                      std::string(status_text(m.limit.source.status)) + ")",
                  m.margin < 0.0 ? Ink::red : Ink::line);
    }
  }

  const std::vector<PullSample>& pull() const { return subject_.pull.samples; }

  const HoistSubject& subject_;
  PlotSheet sheet_;
  Plot plot_;
};

}  // namespace

DisplayList make_hoist_sheet(const HoistSubject& subject) { return Sheet(subject).drawn(); }

}  // namespace stowpath
