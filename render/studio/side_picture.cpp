#include <algorithm>
#include <cmath>

#include "render/report/words.h"
#include "render/sheet/findings_drawing.h"
#include "render/sheet/labels.h"
#include "render/sheet/room_drawing.h"
#include "render/sheet/side_dimensions.h"
#include "render/sheet/stair_drawing.h"
#include "render/studio/finding_notes.h"
#include "render/studio/scene_picture.h"
#include "render/studio/swept_outline.h"

namespace stowpath {
namespace {

constexpr double kEdge = 1.5;         // of the pane, kept free of lettering [mm]
constexpr double kShortest = 6.0;     // a least distance shorter than this has its arrows outside [mm]
constexpr double kOffTheFloor = 0.1;  // a foot higher than this has its height told [m]

std::vector<Vec2> corners_of(const PaperBox& box) {
  return {box.least, {box.greatest.x, box.least.y}, box.greatest, {box.least.x, box.greatest.y}};
}

class SidePicture {
 public:
  SidePicture(const PictureWish& wish, const PaneView& pane, Labels labels)
      : wish_(wish),
        subject_(wish.subject),
        model_(wish.subject.model),
        frame_(pane.frame),
        size_(pane.size),
        bounds_{{kEdge, kEdge}, pane.size - Vec2{kEdge, kEdge}},
        labels_(std::move(labels)) {
    view_ = bounds_;
    if (wish_.show_findings) view_.greatest.x -= notes_width(pane.size.x);
  }

  DisplayList under() {
    DisplayList list = empty();
    draw_room_side(list, subject_, frame_);
    if (wish_.show_sweep) sweep(list);
    ghosts(list);
    if (wish_.show_names) label_room_side(list, labels_, subject_, frame_, view_);
    return list;
  }

  DisplayList over() {
    DisplayList list = empty();
    if (wish_.show_dimensions) room_dimensions(list);
    if (wish_.show_findings) findings(list);
    return list;
  }

  DisplayList stair() {
    DisplayList list = empty();
    list.open("stair", "The stair");
    draw_stair(list, frame_, model_, wish_.pose);
    list.close();
    ropes(list);
    avoid_stair();
    if (wish_.closest) least_distance(list);
    if (wish_.show_dimensions) stair_dimensions(list);
    return list;
  }

  Labels labels() const { return labels_; }

 private:
  DisplayList empty() const {
    DisplayList list;
    list.width = size_.x;
    list.height = size_.y;
    return list;
  }

  const Move& move() const { return model_.moves.at(wish_.place.move); }
  Configuration end_of_move(double progress) const { return pose_at(model_, {wish_.place.move, progress}); }

  void sweep(DisplayList& list) {
    const auto rings = wish_.swept ? *wish_.swept : swept_outline(model_, wish_.place.move);
    if (rings.empty()) return;
    list.open("sweep", "What the move sweeps: a picture from poses, no proof");
    for (const std::vector<Vec2>& ring : rings) list.path(on_paper(frame_, ring), true, Pen{Ink::blue, kThin});
    list.close();
  }

  void ghosts(DisplayList& list) {
    if (is_state(move().kind) || stands_over_stations(move())) return;
    list.open("ghosts", "Where the move begins and ends");
    for (const double progress : {0.0, 1.0})
      draw_stair_ghost(list, frame_, model_, end_of_move(progress), {Ink::blue, kThin, Dash::hidden});
    list.close();
  }

  void ropes(DisplayList& list) {
    if (!move().hooked_on) return;
    list.open("lines", "Lines");
    draw_ropes(list, frame_, model_, wish_.pose);
    list.close();
  }

  void avoid_stair() {
    const SectionPoses poses = place_sections(model_.linkage, wish_.pose);
    for (const StairPart& part : model_.stair) {
      if (part.kind != PartKind::side_rail) continue;
      labels_.avoid(on_paper(frame_, placed(part.outline, poses.at(static_cast<std::size_t>(part.section)))), true);
    }
  }

  bool place(DisplayList& list, const Dimension& d) {
    return place_dimension(list, labels_, d.a, d.b, d.off, d.figures, view_);
  }

  void room_dimensions(DisplayList& list) {
    list.open("dimensions", "Heights over the floor, and the loft's edge");
    for (const Dimension& height : room_heights(subject_, frame_)) place(list, height);
    place(list, loft_out(subject_, frame_));
    place(list, rail_out(subject_, frame_));
    list.close();
  }

  void stair_dimensions(DisplayList& list) {
    list.open("stair-dimensions", "Lengths, lean and reach of the stair");
    foot(list);
    for (Dimension length : section_lengths(subject_, frame_, wish_.pose)) {
      if (place(list, length)) continue;
      length.off = -length.off;
      place(list, length);
    }
    draw_lean(list, model_, frame_, wish_.pose.lean);
    lettered(list, {format_degrees(Nominal{wish_.pose.lean}), lean_mark(model_, frame_, wish_.pose.lean), Ink::line});
    folds(list);
    list.close();
  }

  // How far out it is, and how high where it is off the floor.
  void foot(DisplayList& list) {
    place(list, foot_out(subject_, frame_, wish_.pose));
    const Vec2 foot = lowest(), floor{foot.x, model_.floor_level};
    if (foot.y - floor.y < kOffTheFloor) return;
    list.line(frame_(foot), frame_(floor), {Ink::soft, kThin, Dash::hidden});
    place(list, {frame_(floor), frame_(foot), 4.0, dimension_text(AtLeast{foot.y - floor.y}, subject_.units)});
  }

  Vec2 lowest() const {
    const SectionPoses poses = place_sections(model_.linkage, wish_.pose);
    Vec2 out{0.0, 1e9};
    for (const StairPart& part : model_.stair) {
      const Pose2& X_W = poses.at(static_cast<std::size_t>(part.section));
      for (const Vec2 corner : part.outline.core) {
        const Vec2 at = X_W * corner - Vec2{0.0, part.outline.radius};
        if (at.y < out.y) out = at;
      }
    }
    return out;
  }

  void folds(DisplayList& list) {
    const SectionPoses poses = place_sections(model_.linkage, wish_.pose);
    for (int k = 0; k + 1 < model_.linkage.sections; ++k) {
      const auto hinge = static_cast<std::size_t>(k);
      if (wish_.pose.folds[hinge] == 0.0) continue;
      const Vec2 at = frame_(poses.at(hinge) * model_.linkage.distal(k));
      lettered(list, {"fold " + format_degrees(Nominal{wish_.pose.folds[hinge]}), at, Ink::line});
    }
  }

  struct Figures {
    std::string words;
    Vec2 at;
    Ink ink;
  };

  void lettered(DisplayList& list, const Figures& figures) {
    if (within(figures.at))
      labels_.place(list, {{}, figures.words, kFigures, Anchor::start, figures.ink, 0.0, true}, figures.at, view_,
                    25.0);
  }

  void findings(DisplayList& list) {
    const auto marks = finding_marks(subject_, frame_);
    const std::vector<Vec2> pane = corners_of(bounds_);
    std::vector<std::optional<Vec2>> shown(marks.size());
    for (std::size_t i = 0; i < marks.size(); ++i) {
      if (!marks[i] || !within(*marks[i])) continue;
      const Finding& finding = subject_.fit.findings[i];
      shown[i] = marks[i];
      list.open("finding-" + finding.id, finding.id + ": " + finding_sentence(finding, subject_.units));
      if (wish_.chosen_finding == i) draw_finding(list, finding, frame_, pane);
      draw_mark(list, finding, *marks[i]);
      list.close();
      labels_.keep_off(grown({*marks[i], *marks[i]}, kRing - 0.4));
    }
    if (view_.greatest.x == bounds_.greatest.x)
      return label_findings(list, labels_, subject_.fit.findings, shown, view_);
    draw_finding_notes(list, labels_, subject_, shown, wish_.chosen_finding,
                       {{view_.greatest.x + 3.0, bounds_.least.y + 3.0}, bounds_.greatest});
  }

  bool within(Vec2 at) const {
    return at.x > view_.least.x && at.x < view_.greatest.x && at.y > view_.least.y && at.y < view_.greatest.y;
  }

  // Between the two witness points, as a dimension; in red, with a word, where it is less than the margin.
  void least_distance(DisplayList& list) {
    const PoseMeeting& m = *wish_.closest;
    const Vec2 a = frame_(m.witness.on_a), b = frame_(m.witness.on_b), middle = lerp(a, b, 0.5);
    const Ink ink = m.clearance < m.needed ? Ink::red : Ink::line;
    list.open("least-distance", m.parts[0] + " to " + m.parts[1]);
    if (m.clearance < 0.0) {
      list.line(a, b, {ink, kMedium});
      cross_mark(list, middle, 1.6, {Ink::red, kMedium});
    } else {
      measured(list, a, b, ink);
    }
    lettered(list, {least_distance_text(m, subject_.units), middle, ink});
    list.close();
  }

  static void measured(DisplayList& list, Vec2 a, Vec2 b, Ink ink) {
    const double length = norm(b - a);
    for (const Vec2 end : {a, b}) list.circle(end, 0.5, Pen{ink, kThin}, ink);
    if (length < 1e-6) return;
    const Vec2 d = (1.0 / length) * (b - a);
    const bool outside = length < kShortest;
    const double stub = outside ? 5.0 : 0.0;
    list.line(a - stub * d, b + stub * d, {ink, kMedium});
    arrowhead(list, a, outside ? d : -d, ink);
    arrowhead(list, b, outside ? -d : d, ink);
  }

  const PictureWish& wish_;
  const Subject& subject_;
  const Model& model_;
  ViewFrame frame_;
  Vec2 size_;
  PaperBox bounds_;  // of the pane
  PaperBox view_;    // of the drawing in it, without the notes
  Labels labels_;
};

void add(DisplayList& list, DisplayList&& layer) {
  list.items.insert(list.items.end(), std::make_move_iterator(layer.items.begin()),
                    std::make_move_iterator(layer.items.end()));
}

}  // namespace

std::string least_distance_text(const PoseMeeting& meeting, DisplayUnits units) {
  const AtLeast clearance{meeting.clearance};
  if (meeting.clearance < 0.0) return format_small_length(-clearance, units) + " deep";
  const std::string size = format_small_length(clearance, units);
  return meeting.clearance < meeting.needed ? size + ", too close" : size;
}

StillSide still_side(const PictureWish& wish, const PaneView& pane) {
  SidePicture picture(wish, pane, {});
  StillSide out;
  out.over = picture.over();  // its lettering has the first choice of places
  out.under = picture.under();
  out.labels = picture.labels();
  return out;
}

DisplayList moving_side(const PictureWish& wish, const PaneView& pane, Labels labels) {
  return SidePicture(wish, pane, std::move(labels)).stair();
}

DisplayList side_picture(const PictureWish& wish, const PaneView& pane) {
  StillSide still = still_side(wish, pane);
  DisplayList list = std::move(still.under);
  list.title = "Side view: " + wish.subject.model.name;
  list.description = pose_text(wish.subject.model.linkage, wish.pose);
  add(list, moving_side(wish, pane, std::move(still.labels)));
  add(list, std::move(still.over));
  return list;
}

}  // namespace stowpath
