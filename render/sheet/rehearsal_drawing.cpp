#include "render/sheet/rehearsal_drawing.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "render/report/hoist_words.h"
#include "render/report/recording_words.h"
#include "render/sheet/recording_curves.h"
#include "render/sheet/roll_drawing.h"
#include "render/sheet/room_drawing.h"
#include "render/sheet/rope_drawing.h"
#include "render/sheet/side_view.h"
#include "render/sheet/stair_drawing.h"
#include "sim/rehearsal/script.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr std::size_t kGhosts = 9;      // drawn one over the other
constexpr double kFarthestName = 12.0;  // of a ghost's time from its foot [mm]
constexpr double kAxisAir = 10.5;       // over a plot, for its title and the figures of the one above [mm]
constexpr double kTimeAir = 12.0;       // under the last one, for the time's figures and title [mm]
constexpr double kFiguresAir = 13.0;    // left of a plot [mm]
constexpr int kFiguresUp = 4;           // at most, on an upright axis
constexpr int kFewFiguresUp = 2;        // where four plots share the height
constexpr double kLeastStations = 0.02;  // on the axis of a stair that hardly rolls [m]
constexpr double kLegendRight = 55.0;   // of a plot's left edge, past its title [mm]

const std::array<Pen, kMaxSections> kSectionPens{Pen{Ink::line, kHeavy}, Pen{Ink::blue, kMedium},
                                                 Pen{Ink::soft, kMedium, Dash::hidden}};

void name_frame(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                const PaperBox& bounds, const RecordedFrame& at) {
  const Vec2 foot = frame(recorded_foot(subject.model, subject.recording, at));
  labels.place(list, {foot, time_text(Nominal{at.time}), kNotes, Anchor::start, Ink::blue}, foot, bounds,
               kFarthestName);
}

std::vector<Vec2> together(const std::vector<std::vector<Vec2>>& curves) {
  std::vector<Vec2> all;
  for (const std::vector<Vec2>& curve : curves) all.insert(all.end(), curve.begin(), curve.end());
  return all;
}

/// The plots, on one axis of time.
class Plots {
 public:
  Plots(DisplayList& list, Labels& labels, const RecordingSubject& subject, const PaperBox& box)
      : list_(list),
        labels_(labels),
        subject_(subject),
        box_(box),
        curves_(curves_of(subject.model, subject.recording)),
        rolls_(has_roll(subject.recording)),
        leans_(!rolls_ || leans_change()) {}

  TimeAxis draw() {
    int row = 0;
    if (rolls_) stations(place(row++));
    pulls(place(row++));
    speeds(place(row++));
    if (leans_) leans(place(row++));
    const PaperBox last = place(row - 1);
    const PlotAxis time = time_axis("");
    return {{last.least.x, last.greatest.x}, {time.lo, time.hi}};
  }

 private:
  int rows() const { return 2 + (rolls_ ? 1 : 0) + (leans_ ? 1 : 0); }
  int figures_up() const { return rows() > 3 ? kFewFiguresUp : kFiguresUp; }

  // A stair that is only rolled leans as it stands.
  bool leans_change() const {
    for (const std::vector<Vec2>& lean : curves_.leans) {
      for (const Vec2& at : lean)
        if (std::abs(at.y - lean.front().y) > kDegree) return true;
    }
    return false;
  }

  bool imperial() const { return subject_.units == DisplayUnits::imperial; }

  PaperBox place(int row) const {
    const double height = (box_.greatest.y - box_.least.y - kTimeAir - rows() * kAxisAir) / rows();
    const double up = box_.least.y + kAxisAir + row * (height + kAxisAir);
    return {{box_.least.x + kFiguresAir, up}, {box_.greatest.x - 3.0, up + height}};
  }

  PlotAxis time_axis(const char* title) const {
    const double from = subject_.recording.frames.front().time, to = ends_at(subject_.recording);
    PlotAxis axis = round_axis(from, std::max(to, from + 1e-3), 10, title);
    return axis;
  }

  // The axis of values that hold 0 and all of the curves.
  PlotAxis value_axis(std::initializer_list<const std::vector<Vec2>*> curves, double unit, std::string title) const {
    double lo = 0.0, hi = 0.0;
    for (const std::vector<Vec2>* curve : curves) {
      for (const Vec2& v : *curve) lo = std::min(lo, v.y / unit), hi = std::max(hi, v.y / unit);
    }
    if (!(hi - lo > 1e-6)) hi = lo + 1.0;
    return round_axis(lo, hi, figures_up(), std::move(title));
  }

  void curve(const Plot& plot, std::vector<Vec2> values, double unit, const Pen& pen) {
    for (Vec2& value : values) value.y /= unit;
    draw_curve(list_, plot, values, pen);
  }

  void curve(const Plot& plot, const BrokenCurve& pieces, double unit, const Pen& pen) {
    for (const std::vector<Vec2>& piece : pieces) curve(plot, piece, unit, pen);
  }

  void begin(const char* id, const char* title, const Plot& plot) {
    list_.open(id, title);
    draw_axes(list_, labels_, plot);
    draw_troubles(list_, plot, subject_.recording);
  }

  void stations(const PaperBox& box) {
    const double unit = imperial() ? kFoot : 1.0;
    double lo = INFINITY, hi = -INFINITY;
    for (const Vec2& at : together(curves_.station)) lo = std::min(lo, at.y), hi = std::max(hi, at.y);
    if (hi - lo < kLeastStations) hi = lo + kLeastStations;
    const Plot plot{box, time_axis(""),
                    round_axis(lo / unit, hi / unit, figures_up(), imperial() ? "station, ft" : "station, m")};
    begin("station", "Station of the stair against time", plot);
    curve(plot, curves_.station, unit, {Ink::line, kHeavy});
    list_.close();
  }

  std::string pulls_title(bool folds) const {
    if (!leans_) return "push along the rail, " + std::string(force_unit(subject_.units));
    std::string title = "pull of the hoist line";
    if (folds) title += " and, dashed, of the fold line";
    if (rolls_) title += "; chain line: push along the rail";
    return title + ", " + std::string(force_unit(subject_.units));
  }

  void pulls(const PaperBox& box) {
    const double unit = imperial() ? kPoundForce : 1.0;
    const bool folds = subject_.scene.fold_line.has_value();
    const Plot plot{box, time_axis(""),
                    value_axis({&curves_.hoist, &curves_.fold, &curves_.push}, unit, pulls_title(folds))};
    begin("pull", "Pull of the lines against time", plot);
    if (folds && leans_) curve(plot, curves_.fold, unit, {Ink::blue, kMedium, Dash::hidden});
    if (rolls_) curve(plot, curves_.push, unit, {Ink::soft, kMedium, Dash::chain});
    if (leans_) curve(plot, curves_.hoist, unit, {Ink::line, kHeavy});
    list_.close();
  }

  void speeds(const PaperBox& box) {
    const double unit = imperial() ? kFoot : 1.0;
    const std::vector<Vec2> all = together(curves_.speed);
    const Plot plot{box, time_axis(leans_ ? "" : "time, s"),
                    value_axis({&all}, unit, imperial() ? "speed of the foot, ft/s" : "speed of the foot, m/s")};
    begin("speed", "Speed of the foot against time", plot);
    curve(plot, curves_.speed, unit, {Ink::line, kHeavy});
    list_.close();
  }

  void leans(const PaperBox& box) {
    static constexpr std::array<const char*, kMaxSections> kNames{"section 1", "section 2", "section 3"};
    const std::vector<Vec2> all = together(curves_.leans);
    const Plot plot{box, time_axis("time, s"), value_axis({&all}, kDegree, "lean from plumb, degrees")};
    begin("lean", "Lean of the sections against time", plot);
    std::vector<LegendEntry> legend;
    for (std::size_t j = 0; j < curves_.leans.size(); ++j) {
      curve(plot, curves_.leans[j], kDegree, kSectionPens.at(j));
      legend.push_back({kNames.at(j), kSectionPens.at(j)});
    }
    draw_legend(list_, labels_, {box.least.x + kLegendRight, box.least.y - 2.2}, legend);
    list_.close();
  }

  DisplayList& list_;
  Labels& labels_;
  const RecordingSubject& subject_;
  PaperBox box_;
  RecordingCurves curves_;
  bool rolls_, leans_;
};

}  // namespace

void check_rehearsal(const RecordingSubject& subject) {
  if (subject.recording.frames.empty()) throw std::invalid_argument("the recording has no frames to draw");
  if (subject.recording.sections != subject.model.linkage.sections)
    throw std::invalid_argument("the recording is of another stair: its sections are not as many");
}

ViewFrame frame_across(const PaperBox& extent, double width, double air) {
  const double metres = extent.greatest.x - extent.least.x;
  ViewFrame frame{{}, {metres * 1000.0 / (width - 2.0 * air), ""}, false};
  frame.zero = {air - frame.scale.paper(extent.least.x), air + frame.scale.paper(extent.greatest.y)};
  return frame;
}

PaperBox rehearsal_extent(const RecordingSubject& subject) { return side_extent(RoomSubject(subject).shown); }

void draw_rehearsal_room(DisplayList& list, const RecordingSubject& subject, const ViewFrame& frame) {
  draw_room_side(list, RoomSubject(subject).shown, frame);
}

void label_rehearsal_room(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame) {
  label_room_side(list, labels, RoomSubject(subject).shown, frame);
}

void draw_recorded_ropes(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                         const RecordedFrame& at, const PaperBox& bounds) {
  const CrewSpeeds crew = crew_speeds(subject.scene);
  const SectionPoses poses = recorded_poses(at, subject.recording.sections);
  const auto rope = [&](const Rigging& rigging, const RecordedLine& now, double strongest, const std::string& name) {
    const RopeSight sight{rigging, poses, now, strongest};
    draw_rope(list, labels, frame, sight);
    label_rope(list, labels, frame, sight, name, kNotes, subject.units, bounds);
  };
  if (subject.scene.hoist && subject.scene.hoist->ceiling_point)
    rope(hoist_rigging(subject.scene), at.hoist, crew.strength, "");
  if (const auto fold = fold_rigging(subject.scene)) rope(*fold, at.fold, crew.by_hand, "fold line");
}

void draw_strip(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                const PaperBox& bounds, bool last) {
  const Recording& recording = subject.recording;
  const std::vector<std::size_t> shown = strip_frames(subject.model, recording, kGhosts, drawn_until(recording));
  list.open("strip", "The stair as it went, from the first frame to the last");
  for (const std::size_t i : shown) {
    const bool first = i == shown.front();
    const SectionPoses poses = recorded_poses(recording.frames[i], recording.sections);
    if (last && i == shown.back()) {
      draw_stair(list, frame, subject.model, poses);
    } else {
      draw_stair_ghost(list, frame, subject.model, poses,
                       {Ink::blue, first ? kMedium : kThin, first ? Dash::solid : Dash::hidden});
    }
  }
  for (const std::size_t i : shown) name_frame(list, labels, subject, frame, bounds, recording.frames[i]);
  list.close();
}

void draw_troubles(DisplayList& list, const Plot& plot, const Recording& recording) {
  for (const RecordedEvent& event : told_events(recording)) {
    if (!is_trouble(event) || event.time < plot.x.lo || event.time > plot.x.hi) continue;
    const double at = plot(event.time, plot.y.lo).x;
    list.line({at, plot.box.least.y}, {at, plot.box.greatest.y}, {Ink::red, kThin, Dash::hidden});
  }
}

TimeAxis draw_rehearsal_plots(DisplayList& list, Labels& labels, const RecordingSubject& subject, const PaperBox& box) {
  return Plots(list, labels, subject, box).draw();
}

}  // namespace stowpath
