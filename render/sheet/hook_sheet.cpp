#include "render/sheet/hook_sheet.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "render/report/words.h"
#include "render/sheet/check_bar.h"
#include "render/sheet/hook_view.h"

namespace stowpath {
namespace {

constexpr double kBorder = 8.0;       // [mm]
constexpr double kAir = 5.0;          // between views, and about them
constexpr double kHeading = 12.0;     // over each view
constexpr double kBand = 44.0;        // for the bar, the notes and the title under the views
constexpr double kSameLean = 3.5e-3;  // views of leans this near are one [rad]

struct Paper {
  double width, height;  // [mm]
  const char* name;
};

const std::vector<Paper>& papers(DisplayUnits units) {
  static const std::vector<Paper> metric{{297, 210, "A4"}, {420, 297, "A3"}, {594, 420, "A2"}, {841, 594, "A1"}};
  static const std::vector<Paper> imperial{
      {279.4, 215.9, "Letter"}, {431.8, 279.4, "11 by 17"}, {558.8, 431.8, "17 by 22"}, {863.6, 558.8, "22 by 34"}};
  return units == DisplayUnits::metric ? metric : imperial;
}

// Views of one lean are one; the closest pose stands for the others.
void add_pose(std::vector<HookPose>& poses, HookPose pose) {
  const auto same = std::find_if(poses.begin(), poses.end(), [&](const HookPose& other) {
    return std::abs(other.at.lean - pose.at.lean) < kSameLean;
  });
  if (same == poses.end()) {
    poses.push_back(std::move(pose));
    return;
  }
  if (pose.closest) same->at = pose.at;
  pose.title[0] = static_cast<char>(pose.title[0] + ('a' - 'A'));
  same->title += " and " + pose.title;
  same->beside = std::min(same->beside, pose.beside);
}

/// In a roll, and on a hoist that rolls, every bracket is passed.
double beside_in(const Model& model, const Move& move, double station) {
  const bool passes = std::any_of(move.segments.begin(), move.segments.end(),
                                  [](const Segment& segment) { return segment.over_stations(); });
  return passes ? 0.0 : beside_bracket(model, station);
}

std::vector<HookPose> poses_of(const HookSubject& subject) {
  const Model& model = subject.model;
  std::vector<HookPose> poses{{"Working", working_configuration(model), true}};
  if (subject.closest) {
    const Move& move = model.moves.at(static_cast<std::size_t>(subject.closest->move));
    const Configuration& at = subject.closest->at;
    add_pose(poses, {"Closest to a bracket", at, false, beside_in(model, move, at.station), true});
  }
  if (const auto parked = parked_configuration(model))
    add_pose(poses, {"Parked", *parked, false, beside_in(model, model.moves.back(), parked->station)});
  return poses;
}

class HookSheet {
 public:
  explicit HookSheet(const HookSubject& subject) : subject_(subject), poses_(poses_of(subject)) {
    for (const HookPose& pose : poses_) windows_.push_back(hook_window(subject.model, pose.at));
    choose_paper();
    list_.title = "Hook detail: " + subject.model.name;
    list_.description = "The hook on its pipe at a bracket, full size";
  }

  DisplayList drawn() {
    list_.box({kBorder, kBorder}, {list_.width - kBorder, list_.height - kBorder}, Pen{Ink::line, kHeavy});
    views();
    const double top = list_.height - kBorder - kBand;
    list_.line({kBorder, top}, {list_.width - kBorder, top}, {Ink::line, kThin});
    draw_check_bar(list_, labels_, {kBorder + kAir, top + 9.0}, subject_.units, "Print at 100 %.",
                   "This bar must measure " + check_bar_length(subject_.units) + ".");
    const double title = list_.width - kBorder - title_width();
    notes(top, title);
    title_block(top, title);
    return std::move(list_);
  }

 private:
  static Vec2 size_of(const PaperBox& window) { return 1000.0 * (window.greatest - window.least); }

  double wanted_width() const {
    double width = 2 * kBorder + kAir;
    for (const PaperBox& window : windows_) width += size_of(window).x + kAir;
    return width;
  }

  double wanted_height() const {
    double above = 0.0, below = 0.0;
    for (const PaperBox& window : windows_) {
      above = std::max(above, 1000.0 * window.greatest.y);
      below = std::max(below, -1000.0 * window.least.y);
    }
    return 2 * kBorder + kBand + kHeading + above + below + 2 * kAir;
  }

  void choose_paper() {
    const std::vector<Paper>& all = papers(subject_.units);
    const auto fits = std::find_if(all.begin(), all.end(), [this](const Paper& paper) {
      return wanted_width() <= paper.width && wanted_height() <= paper.height;
    });
    paper_ = fits == all.end() ? all.back() : *fits;
    list_.width = paper_.width;
    list_.height = paper_.height;
  }

  // Side by side, their pipes at one height, what is left of the width shared out between them; cut off where even the
  // largest sheet is too small.
  void views() {
    const double spare = std::max(0.0, paper_.width - wanted_width()) / static_cast<double>(poses_.size() + 1);
    const double bottom = list_.height - kBorder - kBand - kAir, top = kBorder + kAir + kHeading;
    double above = 0.0;
    for (const PaperBox& window : windows_) above = std::max(above, 1000.0 * window.greatest.y);
    const double lift = 0.5 * std::max(0.0, paper_.height - wanted_height());
    double x = kBorder + kAir + spare;
    for (std::size_t i = 0; i < poses_.size(); ++i) {
      const PaperBox& window = windows_[i];
      const Vec2 pipe{x - 1000.0 * window.least.x, top + lift + above};
      const PaperBox box{{x, std::max(top, pipe.y - 1000.0 * window.greatest.y)},
                         {std::min(x + size_of(window).x, list_.width - kBorder - kAir),
                          std::min(pipe.y - 1000.0 * window.least.y, bottom)}};
      list_.open("hook-" + std::to_string(i + 1), poses_[i].title);
      draw_hook_view(list_, labels_, subject_, poses_[i], pipe, box);
      list_.close();
      x += size_of(window).x + kAir + spare;
    }
  }

  /// A size to a tenth of a millimetre, or to a sixteenth of an inch.
  std::string size_words(double metres) const {
    if (subject_.units == DisplayUnits::imperial) return format_small_length(Nominal{metres}, subject_.units);
    const bool whole = std::abs(metres * 1e3 - std::round(metres * 1e3)) < 0.05;
    return format_millimetres(Nominal{metres}, whole ? 0 : 1);
  }

  std::string hook_words() const {
    const Hooks& hooks = subject_.scene.stair.hooks;
    const std::string metal = hooks.form == HookForm::rod
                                  ? "rod " + size_words(hooks.rod)
                                  : "plate " + size_words(hooks.thickness) + ", rim " + size_words(hooks.rim);
    std::string words = "Hook: " + metal + ", inside radius " + size_words(hooks.inside) + ", " +
                        format_degrees(Nominal{hooks.wrap}, 0) + " of arc";
    if (hooks.tip > 0.0) words += ", tip " + size_words(hooks.tip);
    return words + ". Pipe: " + size_words(subject_.scene.rail.pipe.diameter) + ".";
  }

  std::string trim_words() const {
    const auto small = [this](double metres) { return format_small_length(Nominal{metres}, subject_.units); };
    if (subject_.trim)
      return "Trim the curl to " + format_degrees(Nominal{subject_.trim->wrap}, 0) +
             " of arc: " + small(subject_.trim->cut) +
             " off along its outside. With it, the whole scene's proof keeps every hook " +
             small(subject_.model.margin.hook) +
             " and the hook's play from the brackets. Check that it still stays on.";
    if (!meets_bracket(subject_.fit))
      return "No trim needed: the hooks are proven to keep " + small(subject_.model.margin.hook) +
             " and their play from the brackets in every move.";
    return "No trim down to " + format_degrees(Nominal{kLeastArc}, 0) + " of arc clears the brackets.";
  }

  /// A shift along the rail may free the two sooner than one in the side view, which is all that the views show.
  static std::string along_rail(const HookGap& gap) {
    return std::abs(gap.clearance - gap.side_view.distance) > 5e-5 ? ", counting the way along the rail" : "";
  }

  std::string closest_words() const {
    if (!subject_.closest) return "No bracket comes within a metre of a hook.";
    const Move& move = subject_.model.moves.at(static_cast<std::size_t>(subject_.closest->move));
    const std::string when = is_state(move.kind)
                                 ? std::string(move_name(move.kind))
                                 : "step " + std::to_string(move.index) + ", " + std::string(move_name(move.kind));
    const AtLeast least{subject_.closest->clearance};
    const bool meets = least.value < 0.0;
    return "Closest over all moves: " + format_small_length(meets ? Figure(-least) : least, subject_.units) +
           (meets ? " deep" : " apart") + ", " + when + along_rail(*subject_.closest) + ".";
  }

  std::string drawing_words() const {
    return "Seen along the rail, the hook seated; a bracket that stands elsewhere is dashed. Round things are drawn "
           "out "
           "by at most " +
           format_millimetres(AtMost{subject_.model.arc_tolerance}, 2) + ".";
  }

  void notes(double top, double right) {
    const double left = kBorder + kAir + 110.0;
    double y = top + 6.5;
    for (const std::string& words : {hook_words(), closest_words(), trim_words(), drawing_words()}) {
      for (const std::string& line : wrap_text(words, kNotes, right - left - kAir)) {
        labels_.fix(list_, {{left, y}, line, kNotes});
        y += 3.9;
      }
      y += 1.0;
    }
  }

  double title_width() const { return paper_.width < 350.0 ? 62.0 : 110.0; }

  void title_block(double top, double left) {
    const double right = list_.width - kBorder;
    list_.open("title-block", "Title block");
    list_.line({left, top}, {left, list_.height - kBorder}, {Ink::line, kThin});
    const double x = left + 3.0;
    double y = top + 8.0;
    std::vector<std::string> name = wrap_text(subject_.model.name, 3.5, right - x - 3.0);
    if (name.size() > 3) name = {name[0], name[1], "..."};
    for (const std::string& line : name) {
      labels_.fix(list_, {{x, y}, line, 3.5});
      y += 5.6;
    }
    labels_.fix(list_, {{x, y + 1.6}, "Hook at a bracket, full size 1:1", kNotes});
    labels_.fix(list_, {{x, y + 6.4}, std::string("Stowpath. ") + paper_.name + ".", kNotes, Anchor::start, Ink::soft});
    list_.close();
  }

  const HookSubject& subject_;
  std::vector<HookPose> poses_;
  std::vector<PaperBox> windows_;
  Paper paper_{};
  DisplayList list_;
  Labels labels_;
};

}  // namespace

bool has_hook_and_bracket(const Model& model) {
  return std::any_of(model.stair.begin(), model.stair.end(),
                     [](const StairPart& part) { return part.kind == PartKind::hook; }) &&
         std::any_of(model.room.begin(), model.room.end(),
                     [](const RoomPart& part) { return part.kind == PartKind::bracket; });
}

DisplayList make_hook_sheet(const HookSubject& subject) { return HookSheet(subject).drawn(); }

}  // namespace stowpath
