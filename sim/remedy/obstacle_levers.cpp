#include <algorithm>
#include <limits>
#include <string>
#include <utility>

#include "sim/remedy/lever.h"

namespace stowpath {
namespace {

constexpr double kMostAway = 1.0;      // how far a thing of the room is moved [m]
constexpr double kTouches = 0.005;     // closer, a thing stands on, hangs from or is fixed to it [m]
constexpr double kLargeFace = 0.100;   // side view of a thing that is no longer moved by hand alone [m2]
constexpr double kMostLength = 1.500;  // along the rail: longer things are not shifted out of the way along it [m]

struct Bounds {
  Interval out{1e9, -1e9}, up{1e9, -1e9};
};

Bounds bounds_of(const Obstacle& thing) {
  Bounds b;
  for (const Vec2 corner : thing.outline) {
    b.out = {std::min(b.out.lo, corner.x - thing.radius), std::max(b.out.hi, corner.x + thing.radius)};
    b.up = {std::min(b.up.lo, corner.y - thing.radius), std::max(b.up.hi, corner.y + thing.radius)};
  }
  return b;
}

// All numbers that carry one coordinate (0: out, 1: up) of the thing's outline.
std::vector<LeverValue> coordinate(const LeverSite& site, const std::string& thing, std::size_t axis) {
  const std::string box = thing + ".box." + (axis == 0 ? "out" : "up");
  if (site.draft.number(box + "[0]")) return {{box + "[0]", 1.0}, {box + "[1]", 1.0}};
  if (axis == 0 && site.draft.number(thing + ".post.out")) return {{thing + ".post.out", 1.0}};
  std::vector<LeverValue> values;
  for (std::size_t k = 0;; ++k) {
    const std::string key = thing + ".outline[" + std::to_string(k) + "][" + std::to_string(axis) + "]";
    if (!site.draft.number(key)) return values;
    values.push_back({key, 1.0});
  }
}

std::vector<LeverValue> stations(const LeverSite& site, const std::string& thing) {
  if (site.draft.number(thing + ".post.station")) return {{thing + ".post.station", 1.0}};
  return {{thing + ".stations[0]", 1.0}, {thing + ".stations[1]", 1.0}};
}

struct Mover {
  const LeverSite& site;
  const Obstacle& thing;
  std::string key;
  Labour labour;
  std::vector<Lever>& levers;

  // `less` and `more`: the room there is towards either side.
  void add(std::vector<LeverValue> values, Way less_way, double less, Way more_way, double more) const {
    Lever lever = length_lever(site, ChangeKind::move_obstacle, more_way, labour, std::min(kMostAway, more), 1.0);
    lever.thing = thing.name;
    lever.values = std::move(values);
    Lever back = reversed(lever, less_way);
    back.most = std::min(kMostAway, less);
    levers.push_back(std::move(lever));
    levers.push_back(std::move(back));
  }
};

}  // namespace

void add_obstacle_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  if (finding.part_kinds[1] != PartKind::obstacle) return;
  const auto& all = site.scene.obstacles;
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Obstacle& o) { return o.name == finding.parts[1]; });
  if (found == all.end()) return;
  const Room& room = site.scene.room;
  const Bounds b = bounds_of(*found);
  const bool on_floor = b.up.lo<site.scene.floor.level + kTouches, at_ceiling = b.up.hi> room.ceiling - kTouches;
  if (on_floor && at_ceiling) return;  // a column, a flue: part of the building
  const bool at_back = b.out.lo<kTouches, at_front = b.out.hi> room.depth - kTouches;
  const bool large = b.out.length() * b.up.length() > kLargeFace;
  const std::string key = "obstacles[" + std::to_string(found - all.begin()) + "]";
  const Mover mover{site, *found, key, large ? Labour::furniture : Labour::fixing, levers};
  if (!at_back && !at_front) mover.add(coordinate(site, key, 0), Way::in, b.out.lo, Way::out, room.depth - b.out.hi);
  if (!on_floor && !at_ceiling && !found->round_post)
    mover.add(coordinate(site, key, 1), Way::down, b.up.lo - site.scene.floor.level, Way::up, room.ceiling - b.up.hi);
  if (found->stations.length() <= kMostLength && !over_stations(site.model, finding))
    mover.add(stations(site, key), Way::left, found->stations.lo, Way::right, room.length - found->stations.hi);
}

}  // namespace stowpath
