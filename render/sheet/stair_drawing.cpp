#include "render/sheet/stair_drawing.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace stowpath {
namespace {

std::vector<Vec2> corners(const ViewFrame& frame, const StairPart& part, const SectionPoses& poses) {
  return on_paper(frame, placed(part.outline, poses.at(static_cast<std::size_t>(part.section))));
}

bool is_wood(PartKind kind) {
  return kind == PartKind::side_rail || kind == PartKind::scab || kind == PartKind::spacer_block ||
         kind == PartKind::caster_block;
}

bool is_steel(PartKind kind) {
  return kind == PartKind::hook || kind == PartKind::hinge || kind == PartKind::caster_plate ||
         kind == PartKind::lock_pin;
}

void draw_wood(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses,
               const std::array<double, kMaxSections>& leans) {
  for (const StairPart& part : model.stair) {
    if (!is_wood(part.kind)) continue;
    const std::vector<Vec2> outline = corners(frame, part, poses);
    const bool rail = part.kind == PartKind::side_rail;
    list.path(outline, true, Pen{Ink::line, rail ? kMedium : kThin}, Ink::wood);
    // A hatch that leans a little off the grain says wood without filling it.
    const double grain = leans.at(static_cast<std::size_t>(part.section)) - 0.5 * std::numbers::pi;
    if (rail) hatch(list, outline, grain + 0.35, 2.6, {Ink::faint, kThin});
  }
}

void draw_treads(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses) {
  for (const StairPart& part : model.stair) {
    if (part.kind == PartKind::tread) list.path(corners(frame, part, poses), true, Pen{Ink::line, kThin}, Ink::wood);
  }
}

void draw_fittings(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses) {
  std::map<std::pair<std::string, int>, std::vector<std::vector<Vec2>>>
      steel;  // in a fixed order: same bytes each time
  for (const StairPart& part : model.stair) {
    if (is_steel(part.kind)) {
      steel[{part.name, part.section}].push_back(corners(frame, part, poses));
    } else if (!is_wood(part.kind) && part.kind != PartKind::tread) {
      list.path(corners(frame, part, poses), true, Pen{Ink::line, kThin}, Ink::paper);
    }
  }
  for (const auto& [name, pieces] : steel) draw_pieces(list, pieces, {Ink::line, kThin}, Ink::soft);
}

// Where the foot is followed: the casters' axle, else the datum line's end.
Vec2 foot_point(const Model& model) {
  const int last = model.linkage.sections - 1;
  for (const StairPart& part : model.stair) {
    if (part.kind == PartKind::caster && part.section == last) return bounding_disc(part.outline).centre;
  }
  return {model.linkage.length.at(static_cast<std::size_t>(last)), 0.0};
}

bool shows_in_ghost(PartKind kind) {
  return kind == PartKind::side_rail || kind == PartKind::caster || kind == PartKind::handrail ||
         kind == PartKind::extra;
}

}  // namespace

void draw_pieces(DisplayList& list, const std::vector<std::vector<Vec2>>& pieces, const Pen& pen, Ink fill) {
  Pen twice = pen;
  twice.width *= 2.0;  // its inner half is covered by the fills
  for (const auto& piece : pieces) list.path(piece, true, twice);
  for (const auto& piece : pieces) list.path(piece, true, {}, fill);
}

void draw_stair(DisplayList& list, const ViewFrame& frame, const Model& model, const Configuration& at) {
  const SectionPoses poses = place_sections(model.linkage, at);
  draw_wood(list, frame, model, poses, section_leans(model.linkage, at));
  draw_treads(list, frame, model, poses);
  draw_fittings(list, frame, model, poses);
}

void draw_stair_ghost(DisplayList& list, const ViewFrame& frame, const Model& model, const Configuration& at,
                      const Pen& pen) {
  const SectionPoses poses = place_sections(model.linkage, at);
  for (const StairPart& part : model.stair) {
    if (shows_in_ghost(part.kind)) list.path(corners(frame, part, poses), true, pen);
  }
}

std::vector<std::vector<Vec2>> foot_path(const Model& model) {
  constexpr int kPieces = 24;
  const Vec2 foot = foot_point(model);
  const auto last = static_cast<std::size_t>(model.linkage.sections - 1);
  std::vector<std::vector<Vec2>> out;
  for (const Move& move : model.moves) {
    if (move.kind == MoveKind::stand || move.kind == MoveKind::park || move.kind == MoveKind::roll) continue;
    std::vector<Vec2>& path = out.emplace_back();
    for (const Segment& segment : move.segments) {
      for (int i = 0; i <= kPieces; ++i) {
        const Configuration there = at(model.linkage, segment, static_cast<double>(i) / kPieces);
        path.push_back(place_sections(model.linkage, there).at(last) * foot);
      }
    }
  }
  return out;
}

}  // namespace stowpath
