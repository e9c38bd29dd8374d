#include "render/studio/rehearsal_gauges.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "render/report/hoist_words.h"
#include "render/report/recording_words.h"
#include "render/studio/fitting_words.h"
#include "render/studio/seat_dial.h"
#include "sim/hoist/people.h"
#include "sim/mechanism/hook_shape.h"
#include "sim/rehearsal/script.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kAir = 3.0;              // at the pane's edges [mm]
constexpr double kDialShare = 0.27;       // of the width
constexpr double kLeastDial = 44.0;       // as wide as the words under it [mm]
constexpr double kLargestDial = 60.0;     // [mm]
constexpr double kMostDial = 0.45;        // of the width, however little that is
constexpr double kLeastHeight = 36.0;     // of dial and plots [mm]
constexpr double kLeastWidth = 90.0;      // [mm]
constexpr double kFiguresAir = 13.0;      // left of the plots [mm]
constexpr double kTitleAir = 5.5;         // over the first [mm]
constexpr double kBetween = 10.5;         // for the time's figures of the one and the title of the other [mm]
constexpr double kTimeAir = 10.5;         // under the last [mm]
constexpr double kLine = 3.6;             // of the caution under all [mm]
constexpr double kFigureApart = 4.5;      // on an upright axis [mm]
constexpr double kShortest = 20.0;        // of the axis of time [s]
constexpr double kHeadroom = 1.15;        // over the curve, on the axis of pulls
constexpr double kFarLimit = 3.0;         // times the greatest pull: a limit beyond is left out
constexpr double kLevelsApart = 3.4;      // for their words [mm]
constexpr double kOver = 15.0 * kDegree;  // shown on either side of the hooks' arc
constexpr double kColumns = 300.0;        // a curve's peaks are kept in so many columns

struct Places {
  PaperBox dial, pull, seat;
  std::vector<std::string> caution;
  bool cramped = false;  // room for the caution alone
};

Places places(Vec2 size) {
  Places out;
  out.caution = wrap_text(recording_cautions(), kNotes, size.x - 2.0 * kAir);
  const double bottom = size.y - kAir - kLine * static_cast<double>(out.caution.size());
  const double dial =
      std::min({std::clamp(kDialShare * size.x, kLeastDial, kLargestDial), kMostDial * size.x, bottom - kAir});
  out.dial = {{kAir, kAir}, {kAir + dial, std::min(kAir + dial + 9.0, bottom)}};
  out.cramped = bottom < kLeastHeight || size.x < kLeastWidth;
  const double left = kAir + dial + kFiguresAir, right = size.x - kAir - 2.0;
  const double height = std::max(4.0, 0.5 * (bottom - kTitleAir - kBetween - kTimeAir));
  out.pull = {{left, kTitleAir}, {right, kTitleAir + height}};
  out.seat = {{left, out.pull.greatest.y + kBetween}, {right, out.pull.greatest.y + kBetween + height}};
  return out;
}

double last_time(const Recording& recording) { return recording.frames.empty() ? 0.0 : recording.frames.back().time; }

PlotAxis axis_of_time(const Recording& recording, const char* title) {
  return round_axis(0.0, std::max(kShortest, last_time(recording)), 10, title);
}

// The least and the greatest value in each column: peaks stay, and the stroke is short however long the run.
std::vector<Vec2> thinned(const std::vector<Vec2>& values, double column) {
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < values.size();) {
    std::size_t end = i, least = i, most = i;
    for (; end < values.size() && std::floor(values[end].x / column) == std::floor(values[i].x / column); ++end) {
      if (values[end].y < values[least].y) least = end;
      if (values[end].y > values[most].y) most = end;
    }
    out.push_back(values[std::min(least, most)]);
    if (least != most) out.push_back(values[std::max(least, most)]);
    i = end;
  }
  return out;
}

struct Level {
  double force = 0.0;  // [N]
  std::string words;
};

std::vector<Level> limits(const Scene& scene) {
  std::vector<Level> out;
  if (!scene.hoist) return out;
  if (scene.hoist->winch) return {{crew_speeds(scene).strength, "the most that the crew can pull at the drum"}};
  for (const PersonLimit& limit : hand_pull_limits(haul_task(scene), scene.hoist->hand_limit))
    out.push_back({limit.force, limit.name});
  return out;
}

class Gauges {
 public:
  Gauges(const RecordingSubject& subject, const RecordedFrame& shown, Vec2 size)
      : subject_(subject), shown_(shown), size_(size), places_(places(size)) {
    list_.width = size.x;
    list_.height = size.y;
    list_.title = "Gauges of the rehearsal: " + subject.model.name;
  }

  DisplayList drawn() {
    if (!places_.cramped) {
      draw_seat_dial(list_, labels_, subject_, shown_, places_.dial);
      pulls();
      seats();
    }
    caution();
    return std::move(list_);
  }

 private:
  double column() const { return axis_of_time(subject_.recording, "").hi / kColumns; }
  double unit() const { return subject_.units == DisplayUnits::imperial ? kPoundForce : 1.0; }

  // As many as stand over each other.
  static int figures(const PaperBox& box) {
    return std::clamp(static_cast<int>((box.greatest.y - box.least.y) / kFigureApart), 2, 5);
  }

  void begin(const char* id, const char* says, const Plot& plot) {
    list_.open(id, says);
    draw_axes(list_, labels_, plot);
    draw_troubles(list_, plot, subject_.recording);
    const double at = plot(shown_.time, plot.y.lo).x;
    list_.line({at, plot.box.least.y}, {at, plot.box.greatest.y}, {Ink::blue, kMedium});
  }

  std::vector<Vec2> pull_curve(RecordedLine RecordedFrame::*line) const {
    std::vector<Vec2> out;
    for (const RecordedFrame& frame : subject_.recording.frames)
      out.push_back({frame.time, (frame.*line).pull / unit()});
    return thinned(out, column());
  }

  void pulls() {
    const std::vector<Vec2> hoist = pull_curve(&RecordedFrame::hoist), fold = pull_curve(&RecordedFrame::fold);
    double most = 0.0;
    for (const auto* curve : {&hoist, &fold})
      for (const Vec2& v : *curve) most = std::max(most, v.y);
    const std::vector<Level> levels = near(limits(subject_.scene), most * unit());
    double top = std::max(kHeadroom * most, 1.0);
    for (const Level& level : levels) top = std::max(top, kHeadroom * level.force / unit());
    const bool folds = subject_.scene.fold_line.has_value();
    const std::string now = std::string(force_unit(subject_.units)) + ": " + now_words();
    const std::string title = fitting_title({"pull at the hand, " + now + (folds ? " (dashed: fold line)" : ""),
                                             "pull at the hand, " + now, "pull, " + now});
    const Plot plot{places_.pull, axis_of_time(subject_.recording, ""),
                    round_axis(0.0, top, figures(places_.pull), title)};
    begin("pull-gauge", "Pull at the hand against time", plot);
    draw_levels(plot, levels);
    if (folds) draw_curve(list_, plot, fold, {Ink::blue, kMedium, Dash::hidden});
    draw_curve(list_, plot, hoist, {Ink::line, kHeavy});
    list_.close();
  }

  std::string fitting_title(const std::vector<std::string>& ways) const {
    return fitting_words(ways, kNotes, size_.x - places_.pull.least.x);
  }

  std::string now_words() const {
    if (!shown_.hoist.on) return "not on the line";
    return shown_.hoist.pull > 0.0 ? force_text(AtMost{shown_.hoist.pull}, subject_.units) : "slack";
  }

  // None of them so far off that the curve would lie flat; the least one always.
  static std::vector<Level> near(std::vector<Level> all, double most) {
    const auto far = std::find_if(all.begin(), all.end(), [&](const Level& l) { return l.force > kFarLimit * most; });
    all.erase(std::max(far, all.empty() ? far : all.begin() + 1), all.end());
    return all;
  }

  // Weakest first; one whose words would lie on those of the last is left out.
  void draw_levels(const Plot& plot, const std::vector<Level>& levels) {
    double last = std::numeric_limits<double>::infinity();
    for (const Level& level : levels) {
      const double at = plot(0.0, level.force / unit()).y;
      if (last - at < kLevelsApart) continue;
      draw_level(list_, labels_, plot, level.force / unit(), level.words, {Ink::soft, kThin, Dash::chain});
      last = at;
    }
  }

  // In runs: a gap where the pipe does not bear on the hooks.
  std::vector<std::vector<Vec2>> seat_curves() const {
    std::vector<std::vector<Vec2>> runs(1);
    for (const RecordedFrame& frame : subject_.recording.frames) {
      if (const auto seat = seat_sight(subject_.scene, frame)) {
        runs.back().push_back({frame.time, seat->at / kDegree});
      } else if (!runs.back().empty()) {
        runs.emplace_back();
      }
    }
    return runs;
  }

  void seats() {
    const Interval arc = hook_shape(subject_.scene.stair.hooks).arc;
    const Plot plot{places_.seat, axis_of_time(subject_.recording, "time, s"),
                    round_axis((arc.lo - kOver) / kDegree, (arc.hi + kOver) / kDegree, figures(places_.seat),
                               fitting_title({"where the pipe bears, degrees from the shank",
                                              "bears at, degrees from the shank", "bears at, degrees"}))};
    begin("seat-gauge", "Where the pipe bears on the hooks against time", plot);
    draw_level(list_, labels_, plot, arc.hi / kDegree, "curl's end", {Ink::red, kThin, Dash::chain});
    draw_level(list_, labels_, plot, arc.lo / kDegree, "shank", {Ink::soft, kThin, Dash::chain});
    const double crown = plot(0.0, 90.0).y;  // said where neither of the others' words are in its way
    const double beside = std::min(crown - plot(0.0, arc.hi / kDegree).y, plot(0.0, arc.lo / kDegree).y - crown);
    if (beside >= kLevelsApart) draw_level(list_, labels_, plot, 90.0, "crown", {Ink::soft, kThin, Dash::chain});
    for (const std::vector<Vec2>& run : seat_curves())
      draw_curve(list_, plot, thinned(run, column()), {Ink::line, kHeavy});
    list_.close();
  }

  void caution() {
    double y = size_.y - kAir - kLine * static_cast<double>(places_.caution.size() - 1);
    for (const std::string& line : places_.caution) {
      labels_.fix(list_, {{kAir, y}, line, kNotes, Anchor::start, Ink::soft});
      y += kLine;
    }
  }

  const RecordingSubject& subject_;
  const RecordedFrame& shown_;
  Vec2 size_;
  Places places_;
  DisplayList list_;
  Labels labels_;
};

}  // namespace

DisplayList rehearsal_gauges(const RecordingSubject& subject, const RecordedFrame& shown, Vec2 size) {
  return Gauges(subject, shown, size).drawn();
}

std::optional<double> time_under(const Recording& recording, Vec2 size, Vec2 at) {
  const Places all = places(size);
  if (all.cramped || at.x < all.pull.least.x || at.x > all.pull.greatest.x || at.y < 0.0 || at.y > all.seat.greatest.y)
    return {};
  const double share = (at.x - all.pull.least.x) / (all.pull.greatest.x - all.pull.least.x);
  const PlotAxis axis = axis_of_time(recording, "");
  return std::clamp(axis.lo + share * (axis.hi - axis.lo), 0.0, last_time(recording));
}

}  // namespace stowpath
