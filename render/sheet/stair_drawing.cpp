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

/// The parts of one section, or of all (-1).
class StairPen {
 public:
  StairPen(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses, int section)
      : list_(list), frame_(frame), model_(model), poses_(poses), section_(section) {}

  void draw() {
    wood();
    treads();
    fittings();
  }

 private:
  bool shown(const StairPart& part) const {
    return (section_ < 0 || part.section == section_) && seen_from_side(model_, part);
  }
  std::vector<Vec2> outline(const StairPart& part) const { return corners(frame_, part, poses_); }

  void wood() {
    for (const StairPart& part : model_.stair) {
      if (!shown(part) || !is_wood(part.kind)) continue;
      const bool rail = part.kind == PartKind::side_rail;
      list_.path(outline(part), true, Pen{Ink::line, rail ? kMedium : kThin}, Ink::wood);
      // A hatch that leans a little off the grain says wood without filling it.
      const Pose2& pose = poses_.at(static_cast<std::size_t>(part.section));
      if (rail) hatch(list_, outline(part), std::atan2(pose.s, pose.c) + 0.35, 2.6, {Ink::faint, kThin});
    }
  }

  void treads() {
    for (const StairPart& part : model_.stair) {
      if (shown(part) && part.kind == PartKind::tread)
        list_.path(outline(part), true, Pen{Ink::line, kThin}, Ink::wood);
    }
  }

  void fittings() {
    std::map<std::pair<std::string, int>, std::vector<std::vector<Vec2>>>
        steel;  // in a fixed order: same bytes each time
    for (const StairPart& part : model_.stair) {
      if (!shown(part)) continue;
      if (is_steel(part.kind)) {
        steel[{part.name, part.section}].push_back(outline(part));
      } else if (!is_wood(part.kind) && part.kind != PartKind::tread) {
        list_.path(outline(part), true, Pen{Ink::line, kThin}, Ink::paper);
      }
    }
    for (const auto& [name, pieces] : steel) draw_pieces(list_, pieces, {Ink::line, kThin}, Ink::soft);
  }

  DisplayList& list_;
  const ViewFrame& frame_;
  const Model& model_;
  const SectionPoses& poses_;
  int section_;
};

// Where the foot is followed: the casters' axle, else the datum line's end.
Vec2 foot_point(const Model& model) {
  const int last = model.linkage.sections - 1;
  for (const StairPart& part : model.stair) {
    if (part.kind == PartKind::caster && part.section == last) return bounding_disc(part.outline).centre;
  }
  return {model.linkage.length.at(static_cast<std::size_t>(last)), 0.0};
}

}  // namespace

bool seen_from_side(const Model& model, const StairPart& part) {
  if (part.kind != PartKind::caster) return true;
  const auto first = std::find_if(model.stair.begin(), model.stair.end(),
                                  [](const StairPart& other) { return other.kind == PartKind::caster; });
  return &part == &*first;
}

const std::vector<Interval>& stations_from_above(const Model& model, const StairPart& part) {
  const bool wheel = part.kind == PartKind::caster && !model.wheels.stations.empty();
  return wheel ? model.wheels.stations : part.stations;
}

bool shows_in_ghost(PartKind kind) {
  return kind == PartKind::side_rail || kind == PartKind::caster || kind == PartKind::handrail ||
         kind == PartKind::extra;
}

void draw_pieces(DisplayList& list, const std::vector<std::vector<Vec2>>& pieces, const Pen& pen, Ink fill,
                 double seam) {
  Pen twice = pen;
  twice.width = 2.0 * pen.width + seam;  // its inner half is covered by the fills
  const std::optional<Pen> closing = seam > 0.0 ? std::optional(Pen{fill, seam}) : std::nullopt;
  for (const auto& piece : pieces) list.path(piece, true, twice);
  for (const auto& piece : pieces) list.path(piece, true, closing, fill);
}

void draw_stair(DisplayList& list, const ViewFrame& frame, const Model& model, const Configuration& at) {
  draw_stair(list, frame, model, place_sections(model.linkage, at));
}

void draw_stair_ghost(DisplayList& list, const ViewFrame& frame, const Model& model, const Configuration& at,
                      const Pen& pen) {
  draw_stair_ghost(list, frame, model, place_sections(model.linkage, at), pen);
}

void draw_stair(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses, int section) {
  StairPen(list, frame, model, poses, section).draw();
}

void draw_stair_ghost(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses,
                      const Pen& pen) {
  for (const StairPart& part : model.stair) {
    if (shows_in_ghost(part.kind) && seen_from_side(model, part)) list.path(corners(frame, part, poses), true, pen);
  }
}

void draw_ropes(DisplayList& list, const ViewFrame& frame, const Model& model, const Configuration& at) {
  draw_ropes(list, frame, model, place_sections(model.linkage, at));
}

void draw_ropes(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses,
                bool hooked_on) {
  const auto end = [&](const RopeEnd& rope) {
    return frame(rope.section < 0 ? rope.at : poses.at(static_cast<std::size_t>(rope.section)) * rope.at);
  };
  for (const RopeRun& run : model.ropes) {
    if (is_there(run.when, hooked_on)) list.line(end(run.a), end(run.b), {Ink::blue, kMedium});
  }
}

std::vector<std::vector<Vec2>> foot_path(const Model& model) {
  constexpr int kPieces = 24;
  const Vec2 foot = foot_point(model);
  const auto last = static_cast<std::size_t>(model.linkage.sections - 1);
  std::vector<std::vector<Vec2>> out;
  for (const Move& move : model.moves) {
    if (is_state(move.kind) || move.kind == MoveKind::roll) continue;
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
