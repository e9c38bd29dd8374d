#include "render/sheet/side_view.h"

#include <algorithm>
#include <cmath>

#include "render/report/words.h"
#include "render/sheet/findings_drawing.h"
#include "render/sheet/room_drawing.h"
#include "render/sheet/stair_drawing.h"

namespace stowpath {
namespace {

bool same_pose(const Configuration& a, const Configuration& b) {
  constexpr double kSame = 1e-3;  // [rad], finer than the pencil
  if (std::abs(a.lean - b.lean) > kSame) return false;
  for (std::size_t k = 0; k < a.folds.size(); ++k) {
    if (std::abs(a.folds[k] - b.folds[k]) > kSame) return false;
  }
  return true;
}

// The pose after each move, each drawn once, the working and the parked ones apart.
std::vector<Configuration> ghost_poses(const Model& model) {
  std::vector<Configuration> poses;
  const Configuration working = working_configuration(model), parked = parked_configuration(model).value_or(working);
  for (const Move& move : model.moves) {
    if (move.segments.empty() || is_state(move.kind)) continue;
    const Configuration& end = move.segments.back().to;
    const auto drawn = [&](const Configuration& pose) { return same_pose(pose, end); };
    if (drawn(working) || drawn(parked) || std::any_of(poses.begin(), poses.end(), drawn)) continue;
    poses.push_back(end);
  }
  return poses;
}

void avoid_stair(Labels& labels, const ViewFrame& frame, const Model& model, const Configuration& at) {
  const SectionPoses poses = place_sections(model.linkage, at);
  for (const StairPart& part : model.stair) {
    if (part.kind != PartKind::side_rail) continue;
    labels.avoid(on_paper(frame, placed(part.outline, poses.at(static_cast<std::size_t>(part.section)))), true);
  }
}

void draw_moves(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame) {
  const Model& model = subject.model;
  list.open("moves", "The moves, and where the stair parks");
  for (const Configuration& pose : ghost_poses(model)) {
    draw_stair_ghost(list, frame, model, pose, {Ink::blue, kThin, Dash::hidden});
  }
  if (const auto parked = parked_configuration(model)) {
    draw_stair_ghost(list, frame, model, *parked, {Ink::blue, kMedium, Dash::hidden});
    draw_ropes(list, frame, model, *parked);
    avoid_stair(labels, frame, model, *parked);
  }
  for (const std::vector<Vec2>& path : foot_path(model)) {
    const std::vector<Vec2> drawn = on_paper(frame, path);
    list.path(drawn, false, Pen{Ink::blue, kThin, Dash::chain});
    labels.avoid(drawn, false);
  }
  list.close();
}

// The angle's arc lies where the climber is: out from the stair, under the pivot.
double lean_radius(const Model& model, const ViewFrame& frame) {
  return std::min(30.0, frame.scale.paper(0.45 * model.linkage.length[0]));
}

void draw_working_lean(DisplayList& list, const Subject& subject, const ViewFrame& frame) {
  const Vec2 pivot = frame(subject.model.linkage.pivot);
  const double radius = lean_radius(subject.model, frame);
  list.line(pivot, pivot + Vec2{0.0, radius + 4.0}, {Ink::line, kThin, Dash::chain});
  list.arc(pivot, radius, -0.5 * std::numbers::pi, subject.model.working_lean, {Ink::line, kThin});
}

void label_leans(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame,
                 const PaperBox& bounds) {
  const Model& model = subject.model;
  const double half = 0.4 * model.working_lean;
  const Vec2 arc = frame(model.linkage.pivot) + lean_radius(model, frame) * Vec2{std::sin(half), std::cos(half)};
  labels.place(list, {{}, format_degrees(model.working_lean), kFigures}, arc, bounds);
  const auto parked = parked_configuration(model);
  if (!parked) return;
  const SectionPoses poses = place_sections(model.linkage, *parked);
  const Vec2 end = frame(poses[0] * Vec2{model.linkage.length[0], 0.0});
  labels.place(list, {{}, "parked, lean " + format_degrees(parked->lean), kNotes, Anchor::start, Ink::blue}, end,
               bounds);
}

void dimension_heights(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame) {
  const double floor = subject.model.floor_level, wall = frame.x(0.0);
  const auto height = [&](double up, double off) {
    dimension(list, labels, {wall, frame.y(floor)}, {wall, frame.y(up)}, off,
              dimension_text(up - floor, subject.units));
  };
  height(subject.scene.loft.deck, 9.0);
  height(subject.model.linkage.pivot.y, 17.0);
  height(subject.scene.room.ceiling, 25.0);
}

// Out from the back wall, under the floor: the loft's edge and the foot in the working pose.
void dimension_outs(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame) {
  const Model& model = subject.model;
  const SectionPoses poses = place_sections(model.linkage, working_configuration(model));
  const auto last = static_cast<std::size_t>(model.linkage.sections - 1);
  const Vec2 foot = poses.at(last) * Vec2{model.linkage.length.at(last), 0.0};
  const double floor = frame.y(model.floor_level);
  const auto out = [&](double to, double off) {
    dimension(list, labels, {frame.x(0.0), floor}, {frame.x(to), floor}, -off, dimension_text(to, subject.units));
  };
  out(model.linkage.pivot.x, 6.5);
  out(foot.x, 13.5);
}

void draw_findings_side(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame) {
  const PaperBox extent = side_extent(subject);
  const Vec2 a = frame(extent.least), b = frame(extent.greatest);
  const std::vector<Vec2> window{a, {b.x, a.y}, b, {a.x, b.y}};
  const auto marks = finding_marks(subject, frame);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (!marks[i]) continue;
    const Finding& finding = subject.fit.findings[i];
    list.open("finding-" + finding.id, finding.id + ": " + finding_sentence(finding, subject.units));
    draw_finding(list, finding, frame, window);
    draw_mark(list, finding, *marks[i]);
    list.close();
    labels.keep_off(grown({*marks[i], *marks[i]}, kRing - 0.4));
  }
}

}  // namespace

PaperBox side_extent(const Subject& subject) {
  const double below = subject.model.floor_level;
  return {{0.0, std::min(0.0, below)}, {subject.scene.room.depth, subject.scene.room.ceiling}};
}

void draw_side_view(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame) {
  list.open("side-view", "Side view, looking along the rail");
  draw_room_side(list, subject, frame);
  list.open("working-pose", "The stair in its working pose");
  draw_stair(list, frame, subject.model, working_configuration(subject.model));
  list.close();
  avoid_stair(labels, frame, subject.model, working_configuration(subject.model));
  draw_working_lean(list, subject, frame);
  draw_moves(list, labels, subject, frame);
  dimension_heights(list, labels, subject, frame);
  dimension_outs(list, labels, subject, frame);
  draw_findings_side(list, labels, subject, frame);
  list.close();
}

void label_side_view(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame,
                     const PaperBox& bounds) {
  list.open("side-view-lettering", "Lettering of the side view");
  label_findings(list, labels, subject.fit.findings, finding_marks(subject, frame), bounds);
  label_leans(list, labels, subject, frame, bounds);
  label_room_side(list, labels, subject, frame);
  list.close();
}

}  // namespace stowpath
