#include "render/sheet/hook_view.h"

#include <algorithm>
#include <cmath>

#include "render/report/words.h"
#include "render/sheet/room_drawing.h"
#include "render/sheet/stair_drawing.h"
#include "sim/mechanism/hook_shape.h"

namespace stowpath {
namespace {

constexpr double kAir = 0.016;        // about the hook, for the arc and the trim line [m]
constexpr double kArcOff = 6.0;       // of the arc's dimension from the bend [mm]
constexpr double kBracketNear = 3.0;  // in outer radii: how far from the pipe a bracket is worth showing

Vec2 pipe_centre(const Model& model) {
  for (const RoomPart& part : model.room) {
    if (part.kind == PartKind::pipe) return bounding_disc(part.outline).centre;
  }
  return model.linkage.pivot;
}

double pipe_diameter(const Model& model) {
  for (const RoomPart& part : model.room) {
    if (part.kind == PartKind::pipe) return 2.0 * part.outline.radius;
  }
  return 0.0;
}

PaperBox joined(const PaperBox& a, const PaperBox& b) {
  return {{std::min(a.least.x, b.least.x), std::min(a.least.y, b.least.y)},
          {std::max(a.greatest.x, b.greatest.x), std::max(a.greatest.y, b.greatest.y)}};
}

PaperBox within(const PaperBox& box, double half) {
  return {{std::max(box.least.x, -half), std::max(box.least.y, -half)},
          {std::min(box.greatest.x, half), std::min(box.greatest.y, half)}};
}

PaperBox box_of(const std::vector<Vec2>& points) {
  PaperBox box{points[0], points[0]};
  for (const Vec2 v : points) box = joined(box, {v, v});
  return box;
}

PaperBox shifted(const PaperBox& box, Vec2 by) { return {box.least + by, box.greatest + by}; }

class HookView {
 public:
  HookView(DisplayList& list, Labels& labels, const HookSubject& subject, const HookPose& pose, Vec2 pipe,
           const PaperBox& box)
      : list_(list), labels_(labels), subject_(subject), pose_(pose), box_(box) {
    frame_.scale = {1.0, "1:1"};
    const Vec2 centre = pipe_centre(subject.model);
    frame_.zero = pipe - Vec2{frame_.scale.paper(centre.x), -frame_.scale.paper(centre.y)};
    window_ = {box_.least, {box_.greatest.x, box_.least.y}, box_.greatest, {box_.least.x, box_.greatest.y}};
    pivot_ = frame_(subject.model.linkage.pivot);
    shape_ = hook_shape(subject.scene.stair.hooks);
  }

  void draw() {
    room();
    stair(false);
    bracket();
    pipe();
    stair(true);
    axes();
    list_.path(window_, true, Pen{Ink::soft, kThin});
    heading();
    const std::optional<HookGap> gap = hook_gap_at(subject_.model, pose_.at);
    if (gap && at_bracket()) draw_gap(*gap);
    arc();
    if (subject_.trim) trim_line();
    if (gap) name_gap(*gap);
    if (subject_.trim) name_trim();
    name_arc();
    name_parts();
    if (pose_.standing) bearing();
  }

 private:
  /// Else the bracket is drawn for comparison alone: it stands elsewhere along the rail.
  bool at_bracket() const { return pose_.beside < subject_.model.margin.hook; }

  std::vector<Vec2> clipped(const RoundedPolygon& outline) const {
    return common_part(on_paper(frame_, outline), window_);
  }

  void room() {
    for (const RoomPart& part : subject_.model.room) {
      const bool near_rail = part.kind == PartKind::loft || part.kind == PartKind::guard ||
                             part.kind == PartKind::obstacle || part.kind == PartKind::pipe_joint;
      if (near_rail) list_.path(clipped(part.outline), true, Pen{Ink::soft, kThin}, Ink::wall);
    }
  }

  void bracket() {
    std::vector<std::vector<Vec2>> pieces;
    for (const RoomPart& part : subject_.model.room) {
      if (part.kind == PartKind::bracket) pieces.push_back(clipped(part.outline));
    }
    if (!at_bracket()) {
      for (const std::vector<Vec2>& piece : pieces) list_.path(piece, true, Pen{Ink::soft, kThin, Dash::hidden});
      return;
    }
    draw_pieces(list_, pieces, {Ink::line, kMedium}, Ink::wall);
    for (const std::vector<Vec2>& piece : pieces) {
      hatch(list_, piece, 0.8, 2.2, {Ink::soft, kThin});
      labels_.avoid(piece, true);
    }
  }

  void pipe() {
    const Pipe& pipe = subject_.scene.rail.pipe;
    const Vec2 centre = frame_(pipe_centre(subject_.model));
    list_.circle(centre, frame_.scale.paper(0.5 * pipe.diameter), Pen{Ink::line, kHeavy}, Ink::wall);
    list_.circle(centre, frame_.scale.paper(0.5 * pipe.diameter - pipe.wall), Pen{Ink::line, kThin}, Ink::paper);
  }

  /// The hooks, or the stair's wood behind them.
  void stair(bool hooks) {
    const SectionPoses poses = place_sections(subject_.model.linkage, pose_.at);
    std::vector<std::vector<Vec2>> pieces;
    for (const StairPart& part : subject_.model.stair) {
      const std::vector<Vec2> piece = clipped(placed(part.outline, poses.at(static_cast<std::size_t>(part.section))));
      if (part.kind == PartKind::hook && hooks) pieces.push_back(piece);
      const bool wood = part.kind == PartKind::side_rail || part.kind == PartKind::tread;
      if (wood && !hooks) list_.path(piece, true, Pen{Ink::soft, kThin}, Ink::wood);
    }
    draw_pieces(list_, pieces, {Ink::line, kMedium}, Ink::faint, kRodSeam);
    for (const std::vector<Vec2>& piece : pieces) labels_.avoid(piece, true);
  }

  void axes() {
    const Vec2 centre = frame_(pipe_centre(subject_.model));
    const double half = frame_.scale.paper(0.5 * subject_.scene.rail.pipe.diameter) + 3.0;
    list_.line(centre - Vec2{half, 0.0}, centre + Vec2{half, 0.0}, {Ink::soft, kThin, Dash::chain});
    list_.line(centre - Vec2{0.0, half}, centre + Vec2{0.0, half}, {Ink::soft, kThin, Dash::chain});
  }

  void heading() {
    labels_.fix(list_, {{box_.least.x, box_.least.y - 7.0}, pose_.title, 3.5});
    labels_.fix(list_, {{box_.least.x, box_.least.y - 2.2},
                        pose_text(subject_.model.linkage, pose_.at),
                        kNotes,
                        Anchor::start,
                        Ink::soft});
  }

  /// On paper, at a room angle about the hook circle's centre.
  Vec2 at_angle(double radius, double angle) const { return pivot_ + radius * Vec2{std::cos(angle), -std::sin(angle)}; }

  void arc() {
    const Interval covered = covered_arc(shape_, pose_.at.lean);
    const double radius = frame_.scale.paper(shape_.outer) + kArcOff;
    list_.arc(pivot_, radius, covered.lo, covered.length(), {Ink::line, kThin});
    for (const double end : {covered.lo, covered.hi}) {
      list_.line(at_angle(frame_.scale.paper(shape_.outer) + 1.0, end), at_angle(radius + 1.5, end),
                 {Ink::line, kThin});
    }
    const Vec2 first = at_angle(radius, covered.lo), last = at_angle(radius, covered.hi);
    arrowhead(list_, first, {std::sin(covered.lo), std::cos(covered.lo)}, Ink::line);
    arrowhead(list_, last, {-std::sin(covered.hi), -std::cos(covered.hi)}, Ink::line);
    std::vector<Vec2> chords;
    for (int k = 0; k <= 24; ++k) chords.push_back(at_angle(radius, covered.lo + covered.length() * k / 24.0));
    labels_.avoid(chords, false);
  }

  void name_arc() {
    const Interval covered = covered_arc(shape_, pose_.at.lean);
    const Vec2 middle = at_angle(frame_.scale.paper(shape_.outer) + kArcOff + 1.0, covered.middle());
    labels_.place(list_, {{}, format_degrees(Nominal{covered.length()}, 0) + " of arc", kFigures}, middle, box_);
  }

  void trim_line() {
    const Vec2 from = trim_end(frame_.scale.paper(shape_.inside) - 2.0), to = trim_end(trim_radius());
    list_.line(from, to, {Ink::red, kMedium, Dash::chain});
    labels_.avoid(std::vector<Vec2>{from, to}, false);
  }

  double trim_radius() const { return frame_.scale.paper(shape_.outer) + 9.0; }
  Vec2 trim_end(double radius) const { return at_angle(radius, pose_.at.lean + subject_.trim->wrap); }

  void name_trim() {
    const std::string words = "trim to " + format_degrees(Nominal{subject_.trim->wrap}, 0);
    labels_.place(list_, {{}, words, kFigures, Anchor::start, Ink::red}, trim_end(trim_radius()), box_);
  }

  Ink gap_ink(const HookGap& gap) const { return gap.clearance < subject_.model.margin.hook ? Ink::red : Ink::blue; }

  void draw_gap(const HookGap& gap) {
    if (gap.clearance < 0.0) return shade_overlap();
    const Vec2 a = frame_(gap.side_view.on_a), b = frame_(gap.side_view.on_b);
    const Vec2 d = (1.0 / std::max(norm(b - a), 1e-9)) * (b - a);
    const Ink ink = gap_ink(gap);
    list_.line(a - 6.0 * d, b + 6.0 * d, {ink, kThin});
    arrowhead(list_, a, d, ink);
    arrowhead(list_, b, -d, ink);
    labels_.avoid(std::vector<Vec2>{a - 6.0 * d, b + 6.0 * d}, false);
  }

  void name_gap(const HookGap& gap) {
    const Vec2 middle = frame_(lerp(gap.side_view.on_a, gap.side_view.on_b, 0.5));
    const auto small = [this](Figure metres) { return format_small_length(metres, subject_.units); };
    if (!at_bracket()) {
      const Vec2 low{0.5 * (box_.least.x + box_.greatest.x), box_.greatest.y - 6.0};
      const std::string words = "nearest bracket " + small(AtLeast{pose_.beside}) + " along the rail";
      labels_.place(list_, {{}, words, kNotes, Anchor::start, Ink::blue}, low, box_);
      return;
    }
    const std::string words = gap.clearance < 0.0 ? "meets, " + small(-AtLeast{gap.clearance}) + " deep"
                                                  : "gap " + small(AtLeast{gap.clearance});
    labels_.place(list_, {{}, words, kFigures, Anchor::start, gap_ink(gap)}, middle, box_);
  }

  /// Under a plumb load the pipe bears at its top; in other poses that is a question of the forces.
  void bearing() {
    const Vec2 centre = frame_(pipe_centre(subject_.model));
    const Vec2 top = centre - Vec2{0.0, frame_.scale.paper(0.5 * subject_.scene.rail.pipe.diameter)};
    list_.path({top, top + Vec2{1.3, 2.6}, top + Vec2{-1.3, 2.6}}, true, {}, Ink::line);
    labels_.place(list_, {{}, "bears here", kNotes, Anchor::start, Ink::soft}, top + Vec2{0.0, 2.0}, box_);
  }

  void shade_overlap() {
    const Pose2 X_W = place_sections(subject_.model.linkage, pose_.at)[0];
    for (const StairPart& hook : subject_.model.stair) {
      if (hook.kind != PartKind::hook) continue;
      const std::vector<Vec2> piece = clipped(placed(hook.outline, X_W));
      for (const RoomPart& part : subject_.model.room) {
        if (part.kind != PartKind::bracket) continue;
        const std::vector<Vec2> shared = common_part(piece, clipped(part.outline));
        list_.path(shared, true, Pen{Ink::red, kThin}, Ink::red_wash);
        if (!shared.empty()) labels_.keep_off(box_of(shared));
      }
    }
  }

  void name_parts() {
    std::vector<std::string> named;
    for (const RoomPart& part : subject_.model.room) {
      if (part.kind != PartKind::bracket || std::count(named.begin(), named.end(), part.name) > 0) continue;
      const std::vector<Vec2> piece = clipped(part.outline);
      if (piece.empty()) continue;
      named.push_back(part.name);
      Vec2 middle;
      for (const Vec2 v : piece) middle = middle + (1.0 / static_cast<double>(piece.size())) * v;
      labels_.place(list_, {{}, part.name, kNotes, Anchor::start, Ink::soft}, middle, box_);
    }
  }

  DisplayList& list_;
  Labels& labels_;
  const HookSubject& subject_;
  const HookPose& pose_;
  PaperBox box_;
  ViewFrame frame_;
  std::vector<Vec2> window_;
  Vec2 pivot_;
  HookShape shape_;
};

}  // namespace

PaperBox hook_window(const Model& model, const Configuration& at) {
  const Vec2 centre = pipe_centre(model);
  const Pose2 X_W = place_sections(model.linkage, at)[0];
  const double pipe = 0.004 + 0.5 * pipe_diameter(model);
  PaperBox hook = grown({centre, centre}, pipe - kAir);
  for (const StairPart& part : model.stair) {
    if (part.kind == PartKind::hook && part.name != "hook shank")
      hook = joined(hook, extent_of(placed(part.outline, X_W)));
  }
  hook = shifted(grown(hook, kAir), -centre);
  const double half = kBracketNear * std::max({-hook.least.x, -hook.least.y, hook.greatest.x, hook.greatest.y});
  PaperBox out = hook;
  for (const RoomPart& part : model.room) {
    if (part.kind == PartKind::bracket)
      out = joined(out, within(shifted(grown(extent_of(part.outline), 0.004), -centre), half));
  }
  return out;
}

void draw_hook_view(DisplayList& list, Labels& labels, const HookSubject& subject, const HookPose& pose, Vec2 pipe,
                    const PaperBox& box) {
  HookView(list, labels, subject, pose, pipe, box).draw();
}

}  // namespace stowpath
