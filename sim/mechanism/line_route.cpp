#include "sim/mechanism/line_route.h"

#include <algorithm>

namespace stowpath {
namespace {

constexpr double kHandHeight = 1.2;      // above the floor [m]
constexpr double kKnotDiameters = 6.0;

}  // namespace

RoomPoint hand_place(const Scene& scene) {
  const Hoist& hoist = *scene.hoist;
  if (hoist.line.hand) return *hoist.line.hand;
  RoomPoint hand = hoist.line.leads.empty() ? *hoist.ceiling_point : hoist.line.leads.back();
  hand.at.y = std::min(hand.at.y, scene.floor.level + kHandHeight);
  return hand;
}

std::vector<RoomPoint> line_route(const Scene& scene) {
  if (!scene.hoist || !scene.hoist->ceiling_point) return {};
  std::vector<RoomPoint> points{*scene.hoist->ceiling_point};
  points.insert(points.end(), scene.hoist->line.leads.begin(), scene.hoist->line.leads.end());
  points.push_back(hand_place(scene));
  return points;
}

double tackle_radius(const HoistLine& line) {
  return line.blocks ? std::max(0.5 * line.blocks->width, 0.5 * line.diameter) : 0.5 * line.diameter;
}

double knot_room(const HoistLine& line) { return line.blocks ? line.blocks->length : kKnotDiameters * line.diameter; }

}  // namespace stowpath
