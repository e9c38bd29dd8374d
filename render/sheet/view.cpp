#include "render/sheet/view.h"

#include <algorithm>
#include <cmath>

namespace stowpath {
namespace {

double turn_of(std::span<const Vec2> corners) {
  double area = 0.0;
  for (std::size_t i = 0; i < corners.size(); ++i) area += cross(corners[i], corners[(i + 1) % corners.size()]);
  return area < 0.0 ? -1.0 : 1.0;
}

}  // namespace

// As printed on metric and architect's rulers; 1:30 and 1:40 are less common, and save many a sheet.
const std::vector<DrawingScale>& common_scales(DisplayUnits units) {
  static const std::vector<DrawingScale> metric{{5, "1:5"},     {10, "1:10"},   {20, "1:20"},  {25, "1:25"},
                                                {30, "1:30"},   {40, "1:40"},   {50, "1:50"},  {75, "1:75"},
                                                {100, "1:100"}, {200, "1:200"}, {500, "1:500"}};
  static const std::vector<DrawingScale> imperial{
      {4, "3\" = 1'-0\""},    {8, "1 1/2\" = 1'-0\""},  {12, "1\" = 1'-0\""},    {16, "3/4\" = 1'-0\""},
      {24, "1/2\" = 1'-0\""}, {32, "3/8\" = 1'-0\""},   {48, "1/4\" = 1'-0\""},  {64, "3/16\" = 1'-0\""},
      {96, "1/8\" = 1'-0\""}, {192, "1/16\" = 1'-0\""}, {384, "1/32\" = 1'-0\""}};
  return units == DisplayUnits::metric ? metric : imperial;
}

DrawingScale common_scale(DisplayUnits units, Vec2 paper, Vec2 model) {
  for (const DrawingScale& scale : common_scales(units)) {
    if (scale.paper(model.x) <= paper.x && scale.paper(model.y) <= paper.y) return scale;
  }
  return common_scales(units).back();
}

std::vector<Vec2> on_paper(const ViewFrame& frame, std::span<const Vec2> corners) {
  std::vector<Vec2> out;
  out.reserve(corners.size());
  for (const Vec2& corner : corners) out.push_back(frame(corner));
  return out;
}

std::vector<Vec2> on_paper(const ViewFrame& frame, const RoundedPolygon& outline) {
  const double kFineOnPaper = 0.02;  // [mm]
  return on_paper(frame, drawn_corners(outline, kFineOnPaper * frame.scale.ratio / 1000.0));
}

void hatch(DisplayList& list, std::span<const Vec2> corners, double angle, double every, const Pen& pen) {
  if (corners.size() < 3) return;
  const Vec2 along{std::cos(angle), -std::sin(angle)}, across{-along.y, along.x};
  double lo = 1e9, hi = -1e9;
  for (const Vec2& corner : corners) {
    lo = std::min(lo, dot(corner, across));
    hi = std::max(hi, dot(corner, across));
  }
  for (double level = std::ceil(lo / every) * every + 0.3 * every; level < hi; level += every) {
    double first = 1e9, last = -1e9;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Vec2 a = corners[i], b = corners[(i + 1) % corners.size()];
      const double da = dot(a, across) - level, db = dot(b, across) - level;
      if ((da < 0.0) == (db < 0.0)) continue;
      const double at = dot(lerp(a, b, da / (da - db)), along);
      first = std::min(first, at);
      last = std::max(last, at);
    }
    if (last - first > 0.2) list.line(first * along + level * across, last * along + level * across, pen);
  }
}

// Sutherland and Hodgman: one polygon cut by each edge of the other (Comm. ACM 17(1), 1974, 32-42).
std::vector<Vec2> common_part(std::span<const Vec2> a, std::span<const Vec2> b) {
  std::vector<Vec2> kept(a.begin(), a.end());
  if (b.size() < 3) return {};
  const double turn = turn_of(b);
  for (std::size_t i = 0; i < b.size() && !kept.empty(); ++i) {
    const Vec2 from = b[i], edge = b[(i + 1) % b.size()] - from;
    std::vector<Vec2> next;
    for (std::size_t j = 0; j < kept.size(); ++j) {
      const Vec2 p = kept[j], q = kept[(j + 1) % kept.size()];
      const double side_p = turn * cross(edge, p - from), side_q = turn * cross(edge, q - from);
      if (side_p >= 0.0) next.push_back(p);
      if ((side_p < 0.0) != (side_q < 0.0)) next.push_back(lerp(p, q, side_p / (side_p - side_q)));
    }
    kept = std::move(next);
  }
  return kept.size() < 3 ? std::vector<Vec2>{} : kept;
}

Configuration working_configuration(const Model& model) {
  Configuration at;
  at.lean = model.working_lean;
  at.station = model.home.value_or(model.span.middle());
  return at;
}

std::optional<Configuration> parked_configuration(const Model& model) {
  if (model.moves.empty() || model.moves.back().kind != MoveKind::park || model.moves.back().segments.empty())
    return {};
  return model.moves.back().segments.back().to;
}

}  // namespace stowpath
