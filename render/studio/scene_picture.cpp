#include "render/studio/scene_picture.h"

#include <algorithm>
#include <cmath>

#include "render/report/words.h"
#include "render/sheet/findings_drawing.h"
#include "render/sheet/labels.h"
#include "render/sheet/room_drawing.h"
#include "render/sheet/side_view.h"
#include "render/sheet/span_view.h"
#include "render/sheet/stair_drawing.h"
#include "render/sheet/story_stick.h"

namespace stowpath {
namespace {

constexpr double kAir = 6.0;             // round a view that is fitted [mm]
constexpr double kDimensionsLeft = 30.0;  // for the heights beside the room [mm]
constexpr double kDimensionsUnder = 18.0;
constexpr double kLanesLeft = 26.0;  // for the names of the stick's lanes [mm]
constexpr int kSweepPoses = 12;
constexpr double kLargest = 1.0, kSmallest = 2000.0;  // ratios of the side view's scale

ViewFrame fitted(Vec2 size, Vec2 model, PaperBox air) {
  const Vec2 room = size - air.least - air.greatest;
  ViewFrame frame;
  frame.scale.ratio = std::max({1000.0 * model.x / std::max(room.x, 1.0), 1000.0 * model.y / std::max(room.y, 1.0), 1.0});
  return frame;
}

class SidePicture {
 public:
  SidePicture(const PictureWish& wish, const SideWindow& window)
      : wish_(wish), subject_(wish.subject), frame_(window.frame), bounds_{{1.0, 1.0}, window.size - Vec2{1.0, 1.0}} {
    list_.width = window.size.x;
    list_.height = window.size.y;
    list_.title = "Side view: " + subject_.model.name;
    list_.description = poses_text(subject_.model.linkage, wish.pose, wish.pose);
  }

  DisplayList drawn() {
    draw_room_side(list_, subject_, frame_);
    if (wish_.show_sweep) sweep();
    ghosts();
    list_.open("stair", "The stair");
    draw_stair(list_, frame_, subject_.model, wish_.pose);
    list_.close();
    ropes();
    if (wish_.show_findings) findings();
    if (wish_.closest) least_distance();
    if (wish_.show_names) label_room_side(list_, labels_, subject_, frame_);
    return std::move(list_);
  }

 private:
  const Move& move() const { return subject_.model.moves.at(wish_.place.move); }

  void sweep() {
    list_.open("sweep", "What the move sweeps");
    for (int k = 1; k < kSweepPoses; ++k) {
      const Place there{wish_.place.move, static_cast<double>(k) / kSweepPoses};
      draw_stair_ghost(list_, frame_, subject_.model, pose_at(subject_.model, there), {Ink::faint, kThin});
    }
    list_.close();
  }

  void ghosts() {
    list_.open("ghosts", "Where the move begins and ends");
    for (const double progress : {0.0, 1.0}) {
      draw_stair_ghost(list_, frame_, subject_.model, pose_at(subject_.model, {wish_.place.move, progress}),
                       {Ink::blue, kThin, Dash::hidden});
    }
    list_.close();
  }

  void ropes() {
    if (!move().hooked_on) return;
    list_.open("lines", "Lines");
    draw_ropes(list_, frame_, subject_.model, wish_.pose);
    list_.close();
  }

  void findings() {
    const auto marks = finding_marks(subject_, frame_);
    const std::vector<Vec2> pane{bounds_.least,
                                 {bounds_.greatest.x, bounds_.least.y},
                                 bounds_.greatest,
                                 {bounds_.least.x, bounds_.greatest.y}};
    std::vector<std::optional<Vec2>> shown(marks.size());
    for (std::size_t i = 0; i < marks.size(); ++i) {
      if (!marks[i] || !inside(*marks[i])) continue;
      const Finding& finding = subject_.fit.findings[i];
      shown[i] = marks[i];
      list_.open("finding-" + finding.id, finding.id + ": " + finding_sentence(finding, subject_.units));
      if (wish_.chosen_finding == i) draw_finding(list_, finding, frame_, pane);
      draw_mark(list_, finding, *marks[i]);
      list_.close();
      labels_.keep_off(grown({*marks[i], *marks[i]}, kRing - 0.4));
    }
    label_findings(list_, labels_, subject_.fit.findings, shown, bounds_);
  }

  bool inside(Vec2 at) const {
    return at.x > bounds_.least.x && at.x < bounds_.greatest.x && at.y > bounds_.least.y && at.y < bounds_.greatest.y;
  }

  // Between the two witness points, in red where it is less than the margin.
  void least_distance() {
    const PoseMeeting& m = *wish_.closest;
    const Vec2 a = frame_(m.witness.on_a), b = frame_(m.witness.on_b), middle = lerp(a, b, 0.5);
    const Ink ink = m.clearance < m.needed ? Ink::red : Ink::line;
    list_.open("least-distance", m.parts[0] + " to " + m.parts[1]);
    list_.line(a, b, {ink, kMedium});
    for (const Vec2 end : {a, b}) list_.circle(end, 0.7, Pen{ink, kThin}, Ink::paper);
    if (m.clearance < 0.0) cross_mark(list_, middle, 1.6, {Ink::red, kMedium});
    if (inside(middle))
      labels_.place(list_, {{}, least_distance_text(m, subject_.units), kFigures, Anchor::start, ink, 0.0, true}, middle,
                    bounds_);
    list_.close();
  }

  static std::string least_distance_text(const PoseMeeting& m, DisplayUnits units) {
    const std::string size = format_small_length(std::abs(m.clearance), units);
    return m.clearance < 0.0 ? size + " deep" : size;
  }

  const PictureWish& wish_;
  const Subject& subject_;
  ViewFrame frame_;
  PaperBox bounds_;
  DisplayList list_;
  Labels labels_;
};

// @param depth  that the span view shows: looking it up goes through all poses [m]
ViewFrame rail_frame(const Subject& subject, Vec2 size, double depth) {
  ViewFrame frame =
      fitted(size, {subject.scene.room.length, depth}, {{kLanesLeft, kAir}, {kAir, kStickHeight + kAir}});
  frame.zero = {kLanesLeft, kAir};
  frame.flipped = true;
  return frame;
}

}  // namespace

ViewFrame whole_side(const Subject& subject, Vec2 size) {
  const PaperBox extent = side_extent(subject);
  const Vec2 model = extent.greatest - extent.least;
  ViewFrame frame = fitted(size, model, {{kDimensionsLeft, kAir}, {kAir, kDimensionsUnder}});
  frame.zero = {kDimensionsLeft, size.y - kDimensionsUnder + frame.scale.paper(extent.least.y)};
  return frame;
}

ViewFrame zoomed(const ViewFrame& frame, Vec2 about, double factor) {
  ViewFrame out = frame;
  out.scale.ratio = std::clamp(frame.scale.ratio / factor, kLargest, kSmallest);
  out.zero = about + (frame.scale.ratio / out.scale.ratio) * (frame.zero - about);
  return out;
}

Vec2 under(const ViewFrame& frame, Vec2 paper) {
  const double metres = 0.001 * frame.scale.ratio;
  return {metres * (paper.x - frame.zero.x), (frame.flipped ? 1.0 : -1.0) * metres * (paper.y - frame.zero.y)};
}

DisplayList side_picture(const PictureWish& wish, const SideWindow& window) {
  return SidePicture(wish, window).drawn();
}

ViewFrame rail_frame(const Subject& subject, Vec2 size) { return rail_frame(subject, size, span_depth(subject)); }

DisplayList rail_picture(const PictureWish& wish, Vec2 size) {
  DisplayList list;
  list.width = size.x;
  list.height = size.y;
  list.title = "Span view and story stick: " + wish.subject.model.name;
  Labels labels;
  const double depth = span_depth(wish.subject);
  const ViewFrame span = rail_frame(wish.subject, size, depth);
  ViewFrame stick = span;
  stick.zero.y = size.y - kStickHeight;
  draw_story_stick(list, labels, wish.subject, stick, 2.0);
  const double x = stick.x(wish.pose.station), top = stick.zero.y;
  list.line({x, top - 2.0}, {x, top + kStickHeight - 4.0}, {Ink::blue, kMedium});
  labels.fix(list, {{x, top - 2.8}, place_text(wish.pose.station, wish.subject.units), kNotes, Anchor::middle, Ink::blue,
                    0.0, true});
  const Vec2 corner = span({wish.subject.scene.room.length, depth});
  draw_span_view(list, labels, wish.subject, span, depth, wish.pose, {span.zero, corner});
  return list;
}

}  // namespace stowpath
