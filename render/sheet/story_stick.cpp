#include "render/sheet/story_stick.h"

#include <algorithm>
#include <cmath>

#include "render/report/words.h"

namespace stowpath {
namespace {

// The lanes' lower edges, from the strip's top [mm].
constexpr double kBracketLane = 9.5, kStandLane = 16.0, kParkLane = 22.5, kRuleLane = 27.5;
constexpr double kNames = 22.0;  // the widest of their names [mm]

class Stick {
 public:
  Stick(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame)
      : list_(list), labels_(labels), subject_(subject), frame_(frame) {}

  void lanes() {
    const double right = frame_.x(subject_.scene.room.length);
    list_.box({frame_.x(0.0), y(0.0)}, {right, y(kRuleLane)}, Pen{Ink::line, kMedium}, Ink::paper);
    for (const double lane : {kBracketLane, kStandLane, kParkLane})
      list_.line({frame_.x(0.0), y(lane)}, {right, y(lane)}, {Ink::faint, kThin});
  }

  // Last: looked at from near, the stick goes on behind them.
  void names(double left) {
    lane_name(left, kBracketLane, "rail");
    lane_name(left, kStandLane, "stands");
    lane_name(left, kParkLane, "folds, parks");
    lane_name(left, kRuleLane + 0.6, subject_.units == DisplayUnits::metric ? "station, m" : "station, ft");
  }

  // Brackets as small posts, joints as rings, the rail's own ends as a line.
  void rail() {
    const Rail& rail = subject_.scene.rail;
    const double middle = y(kBracketLane - 2.7);
    list_.line({frame_.x(rail.stations.lo), middle}, {frame_.x(rail.stations.hi), middle}, {Ink::line, kMedium});
    for (const double station : rail.brackets.stations)
      list_.box({frame_.x(station) - 0.5, middle - 2.0}, {frame_.x(station) + 0.5, middle + 2.0}, Pen{Ink::line, kThin},
                Ink::faint);
    bracket_figures();
    for (const PipeJoint& joint : rail.joints)
      list_.circle({frame_.x(joint.station), middle}, 1.3, Pen{Ink::line, kThin}, Ink::paper);
  }

  void standing() {
    for (const Interval& stretch : subject_.fit.reach.standing)
      list_.box({frame_.x(stretch.lo), y(kStandLane - 5.8)}, {frame_.x(stretch.hi), y(kStandLane - 1.2)},
                Pen{Ink::line, kThin}, Ink::wood);
    for (const Interval& blocked : subtract(subject_.fit.reach.span, subject_.fit.reach.standing)) block(blocked);
  }

  void home_and_park() {
    const double middle = y(kParkLane - 3.5);
    if (subject_.model.home) {
      const double x = frame_.x(*subject_.model.home);
      list_.path({{x, middle - 2.6}, {x + 2.2, middle + 2.2}, {x - 2.2, middle + 2.2}}, true, Pen{Ink::line, kThin},
                 Ink::line);
      const double beside = std::max(4.0, frame_.scale.paper(0.5 * subject_.scene.stair.width) + 2.0);
      labels_.fix(
          list_,
          {{x + beside, middle + 1.2}, "home " + place_text(Nominal{*subject_.model.home}, subject_.units), kNotes});
      hooks(*subject_.model.home, middle);
    }
    const auto parked = parked_configuration(subject_.model);
    if (!parked) return;
    const double half = 0.5 * subject_.scene.stair.width;
    list_.box({frame_.x(parked->station - half), middle - 2.4}, {frame_.x(parked->station + half), middle + 2.4},
              Pen{Ink::blue, kThin, Dash::hidden});
  }

  void rule() {
    const bool metric = subject_.units == DisplayUnits::metric;
    const double step = metric ? 0.1 : 0.3048, length = subject_.scene.room.length;
    const int major = metric ? 5 : 1, figured = major * figure_stride(major * step);
    for (int i = 0; i * step <= length + 1e-9; ++i) {
      const double x = frame_.x(i * step);
      list_.line({x, y(kRuleLane)}, {x, y(kRuleLane - (i % major == 0 ? 3.4 : 1.6))}, {Ink::line, kThin});
      if (i % figured != 0) continue;
      const std::string figures = metric ? metres_only(i * step) : std::to_string(i);
      labels_.fix(list_, {{x, y(kRuleLane + 4.0)}, figures, kNotes, Anchor::middle});
    }
  }

 private:
  double y(double down) const { return frame_.zero.y + down; }

  void lane_name(double left, double lane, const std::string& words) {
    labels_.fix(list_,
                {{left, y(lane - 2.3)}, words, kNotes, Anchor::start, Ink::soft, 0.0, frame_.x(0.0) < left + kNames});
  }

  // Every so manieth long tick can carry its figures.
  int figure_stride(double major) const {
    constexpr double kWidest = 9.0;  // of figures and their air [mm]
    for (const int stride : {1, 2, 4, 10}) {
      if (frame_.scale.paper(major) * stride >= kWidest) return stride;
    }
    return 20;
  }

  static std::string metres_only(double metres) {
    const std::string text = format_metres(Nominal{metres}, 1);
    return text.substr(0, text.find(' '));
  }

  // As many bracket stations as can be read, from the left.
  void bracket_figures() {
    double free_from = -1e9;
    for (const double station : subject_.scene.rail.brackets.stations) {
      const Text text{
          {frame_.x(station), y(3.6)}, dimension_text(Nominal{station}, subject_.units), kNotes, Anchor::middle};
      const PaperBox box = grown(text_box(text), 0.6);
      if (box.least.x < free_from) continue;
      labels_.fix(list_, text);
      free_from = box.greatest.x;
    }
  }

  // Red hatch and a cross: a stretch of the loft that is not served.
  void block(const Interval& blocked) {
    const Vec2 least{frame_.x(blocked.lo), y(kStandLane - 5.8)}, greatest{frame_.x(blocked.hi), y(kStandLane - 1.2)};
    const std::vector<Vec2> corners{least, {greatest.x, least.y}, greatest, {least.x, greatest.y}};
    list_.path(corners, true, Pen{Ink::red, kThin});
    hatch(list_, corners, 1.05, 1.4, {Ink::red, kThin});
    if (greatest.x - least.x > 4.0) cross_mark(list_, lerp(least, greatest, 0.5), 1.4, {Ink::red, kMedium});
  }

  void hooks(double station, double middle) {
    for (const double hook : subject_.scene.stair.hooks.stations) {
      const double x = frame_.x(station + hook);
      list_.line({x, middle - 2.8}, {x, middle + 2.8}, {Ink::line, kMedium});
    }
  }

  DisplayList& list_;
  Labels& labels_;
  const Subject& subject_;
  const ViewFrame& frame_;
};

}  // namespace

void draw_story_stick(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame, double left) {
  list.open("story-stick", "Story stick: every station in full");
  Stick stick(list, labels, subject, frame);
  stick.lanes();
  stick.rail();
  stick.standing();
  stick.home_and_park();
  stick.rule();
  stick.names(left);
  list.close();
}

}  // namespace stowpath
