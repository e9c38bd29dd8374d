#include "sim/rehearsal/what_if.h"

#include <algorithm>
#include <cmath>

#include "sim/hoist/worm.h"

namespace stowpath {

namespace {

constexpr double kAirDensity = 1.2;  // [kg/m3]
constexpr double kPlateDrag = 1.2;

bool holds_by_worm(const Winch& winch) { return winch.worm_lead && worm_holds(*winch.worm_lead, winch.worm_friction); }

double extent_along(const RoundedPolygon& outline) {
  const auto [lo, hi] =
      std::minmax_element(outline.core.begin(), outline.core.end(), [](Vec2 a, Vec2 b) { return a.x < b.x; });
  return hi->x - lo->x + 2.0 * outline.radius;
}

}  // namespace

std::string holder_of_line(const Scene& scene, bool on_cleat) {
  if (!scene.hoist) return "";
  if (scene.hoist->winch && holds_by_worm(*scene.hoist->winch)) return "the worm's friction";
  return on_cleat ? "the cleat" : "";
}

PushPoint push_point(const Model& model, const SectionPoses& X_W, double height) {
  const double up = model.floor_level + height;
  PushPoint nearest;
  double least = INFINITY;
  for (int j = 0; j < model.linkage.sections; ++j) {
    const Pose2& X = X_W[static_cast<std::size_t>(j)];
    const double length = model.linkage.length[static_cast<std::size_t>(j)];
    const double along = X.s == 0.0 ? 0.0 : std::clamp((up - X.p.y) / X.s, 0.0, length);
    const double stands = X.p.y + along * X.s;
    if (std::abs(stands - up) >= least) continue;
    least = std::abs(stands - up);
    nearest = {j, {along, 0.0}, stands - model.floor_level};
  }
  return nearest;
}

double face_area(const Model& model, int section) {
  double area = 0.0;
  for (const StairPart& part : model.stair) {
    if (part.section != section || (part.kind != PartKind::side_rail && part.kind != PartKind::tread)) continue;
    for (const Interval& stretch : part.stations) area += stretch.length() * extent_along(part.outline);
  }
  return area;
}

Vec2 gust_force(double area, const Pose2& X_W, double speed) {
  const Vec2 face = X_W.turn({0.0, 1.0});  // out of the climber's face
  const double square = -speed * face.x;
  return 0.5 * kAirDensity * kPlateDrag * area * square * std::abs(square) * face;
}

}  // namespace stowpath
