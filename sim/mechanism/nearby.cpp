#include "sim/mechanism/nearby.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/geometry/distance.h"

namespace stowpath {

namespace {

bool can_hold(PartKind kind) {
  return kind == PartKind::floor || kind == PartKind::wall || kind == PartKind::ceiling || kind == PartKind::loft ||
         kind == PartKind::obstacle;
}

bool is_wood(PartKind kind) {
  return kind == PartKind::side_rail || kind == PartKind::tread || kind == PartKind::scab ||
         kind == PartKind::spacer_block || kind == PartKind::extra;
}

double side_distance(Vec2 at, const RoundedPolygon& outline) {
  return signed_distance(Outline(make_disc(at, 0.0)), Outline(outline));
}

double rail_distance(double station, const std::vector<Interval>& stretches) {
  double least = std::numeric_limits<double>::infinity();
  for (const Interval i : stretches) least = std::min(least, gap({station, station}, i));
  return least;
}

}  // namespace

std::optional<int> holder_of(const Model& model, const RoomPoint& point) {
  double nearest = kHangsWithin;
  std::optional<int> holder;
  for (const RoomPart& part : model.room) {
    if (!can_hold(part.kind)) continue;
    const double d =
        std::hypot(std::max(0.0, side_distance(point.at, part.outline)), rail_distance(point.station, part.stations));
    if (d <= nearest && (!holder || d < nearest)) nearest = d, holder = part.id;
  }
  return holder;
}

WoodAt wood_at(const Model& model, int section, Vec2 at, double station) {
  WoodAt out;
  for (const StairPart& part : model.stair) {
    if (part.section != section || !is_wood(part.kind)) continue;
    const double side = side_distance(at, part.outline);
    const double rail = std::min(rail_distance(station, part.stations), rail_distance(-station, part.stations));
    if (std::hypot(std::max(0.0, side), rail) > kEyeWithin) continue;
    out.ids.push_back(part.id);
    out.depth = std::max(out.depth, -side);
  }
  return out;
}

}  // namespace stowpath
