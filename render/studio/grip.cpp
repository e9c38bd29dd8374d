#include "render/studio/grip.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "render/sheet/room_drawing.h"
#include "sim/geometry/distance.h"

namespace stowpath {
namespace {

constexpr double kFarthestLean = 2.0 * std::numbers::pi / 3.0;

double distance_to(const RoundedPolygon& outline, const Pose2& X_WB, Vec2 point) {
  return distance(outline, X_WB, make_disc({}, 0.0), {point});
}

double angle_of(Vec2 v) { return std::atan2(v.x, -v.y); }  // from straight down, outward

double turned(double from, double to) { return std::remainder(to - from, 2.0 * std::numbers::pi); }

// The smallest of the things under the pointer.
struct Named {
  std::string name;
  double size = std::numeric_limits<double>::infinity();

  void look(const std::string& what, const RoundedPolygon& outline, const Pose2& X_WB, Vec2 point, double reach) {
    const double radius = bounding_disc(outline).radius;
    if (radius < size && distance_to(outline, X_WB, point) <= reach) name = what, size = radius;
  }
};

}  // namespace

const StairPart* nearest_part(const Model& model, const SectionPoses& sections, Vec2 point, double reach) {
  const StairPart* nearest = nullptr;
  double least = reach;
  for (const StairPart& part : model.stair) {
    const double d = distance_to(part.outline, sections.at(static_cast<std::size_t>(part.section)), point);
    if (d <= least) nearest = &part, least = d;
  }
  return nearest;
}

std::optional<Grip> grip_at(const Model& model, const Configuration& pose, Vec2 point, double reach) {
  const StairPart* nearest = nearest_part(model, place_sections(model.linkage, pose), point, reach);
  if (!nearest) return {};
  return nearest->section == 0 ? Grip{GripKind::lean, 0} : Grip{GripKind::fold, nearest->section - 1};
}

Configuration pulled(const Scene& scene, const Model& model, const Configuration& pose, const Grip& grip, Vec2 from,
                     Vec2 to) {
  Vec2 joint = model.linkage.pivot;
  double sign = 1.0;
  if (grip.kind == GripKind::fold) {
    const auto k = static_cast<std::size_t>(grip.hinge);
    joint = place_sections(model.linkage, pose).at(k) * model.linkage.distal(grip.hinge);
    sign = model.linkage.fold_sign.at(k);
  }
  return turned_by(scene, pose, grip, sign * turned(angle_of(from - joint), angle_of(to - joint)));
}

Configuration turned_by(const Scene& scene, const Configuration& pose, const Grip& grip, double by) {
  Configuration out = pose;
  const auto k = static_cast<std::size_t>(grip.hinge);
  if (grip.kind == GripKind::lean) {
    out.lean = std::clamp(pose.lean + by, -kFarthestLean, kFarthestLean);
  } else if (grip.kind == GripKind::fold && k < scene.stair.hinges.size()) {
    out.folds.at(k) = std::clamp(pose.folds.at(k) + by, 0.0, scene.stair.hinges[k].limit);
  }
  return out;
}

Configuration rolled(const Model& model, const Configuration& pose, double by) {
  Configuration out = pose;
  out.station = std::clamp(pose.station + by, model.span.lo, model.span.hi);
  return out;
}

std::string part_at(const Model& model, const Configuration& pose, Vec2 point, double reach) {
  return part_at(model, place_sections(model.linkage, pose), point, reach);
}

std::string part_at(const Model& model, const SectionPoses& poses, Vec2 point, double reach) {
  Named found;
  for (const StairPart& part : model.stair) {
    const std::string of =
        model.linkage.sections > 1 ? " of section " + std::to_string(part.section + 1) : std::string();
    found.look(part.name + of, part.outline, poses.at(static_cast<std::size_t>(part.section)), point, reach);
  }
  if (!found.name.empty()) return found.name;
  for (const RoomPart& part : model.room) {
    if (!is_shell(part.kind)) found.look(part.name, part.outline, {}, point, reach);
  }
  if (!found.name.empty()) return found.name;
  for (const ZonePart& zone : model.zones) found.look("keep clear: " + zone.name, zone.outline, {}, point, reach);
  return found.name;
}

}  // namespace stowpath
