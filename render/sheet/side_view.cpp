#include "render/sheet/side_view.h"

#include <algorithm>
#include <cmath>

#include "render/report/words.h"
#include "render/sheet/findings_drawing.h"
#include "render/sheet/room_drawing.h"
#include "render/sheet/side_dimensions.h"
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

void label_leans(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame,
                 const PaperBox& bounds) {
  const Model& model = subject.model;
  const Vec2 arc = lean_mark(model, frame, model.working_lean);
  labels.place(list, {{}, format_degrees(Nominal{model.working_lean}), kFigures}, arc, bounds);
  const auto parked = parked_configuration(model);
  if (!parked) return;
  const SectionPoses poses = place_sections(model.linkage, *parked);
  const Vec2 end = frame(poses[0] * Vec2{model.linkage.length[0], 0.0});
  labels.place(list, {{}, "parked, lean " + format_degrees(Nominal{parked->lean}), kNotes, Anchor::start, Ink::blue},
               end, bounds);
}

void draw_dimensions(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame) {
  std::vector<Dimension> all = room_heights(subject, frame);
  all.push_back(rail_out(subject, frame));
  all.push_back(foot_out(subject, frame, working_configuration(subject.model)));
  for (const Dimension& one : all) dimension(list, labels, one.a, one.b, one.off, one.figures);
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
  draw_lean(list, subject.model, frame, subject.model.working_lean);
  draw_moves(list, labels, subject, frame);
  draw_dimensions(list, labels, subject, frame);
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
