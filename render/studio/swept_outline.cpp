#include "render/studio/swept_outline.h"

#include <algorithm>

#include "render/sheet/stair_drawing.h"
#include "render/studio/playback.h"
#include "sim/geometry/union_outline.h"

namespace stowpath {
namespace {

constexpr double kFine = 1e-3;  // rounding is cut no finer than this [m]

bool same_shape(const StairPart& a, const StairPart& b) {
  return a.section == b.section && a.outline.radius == b.outline.radius && a.outline.core == b.outline.core;
}

// Left and right rails look alike from the side: one of each shape.
std::vector<const StairPart*> shapes(const Model& model) {
  std::vector<const StairPart*> out;
  for (const StairPart& part : model.stair) {
    const auto like = [&](const StairPart* other) { return same_shape(part, *other); };
    const bool shown = shows_in_ghost(part.kind) && seen_from_side(model, part);
    if (shown && std::none_of(out.begin(), out.end(), like)) out.push_back(&part);
  }
  return out;
}

std::vector<SectionPoses> poses_of(const Model& model, std::size_t move) {
  std::vector<SectionPoses> out;
  for (int k = 0; k <= kSweepPieces; ++k) {
    const Place place{move, static_cast<double>(k) / kSweepPieces};
    out.push_back(place_sections(model.linkage, pose_at(model, place)));
  }
  return out;
}

}  // namespace

std::vector<std::vector<Vec2>> swept_outline(const Model& model, std::size_t move) {
  const Move& swept = model.moves.at(move);
  if (is_state(swept.kind) || stands_over_stations(swept) || swept.segments.empty()) return {};
  const std::vector<SectionPoses> poses = poses_of(model, move);
  std::vector<std::vector<Vec2>> hulls;
  for (const StairPart* part : shapes(model)) {
    const auto section = static_cast<std::size_t>(part->section);
    const std::vector<Vec2> corners = drawn_corners(part->outline, kFine);
    for (std::size_t k = 0; k + 1 < poses.size(); ++k) {
      std::vector<Vec2> both;
      for (const Vec2 corner : corners)
        both.insert(both.end(), {poses[k].at(section) * corner, poses[k + 1].at(section) * corner});
      hulls.push_back(convex_hull(std::move(both)));
    }
  }
  return union_outline(hulls);
}

}  // namespace stowpath
