#include "sim/mechanism/room_parts.h"

#include <algorithm>
#include <string>
#include <utility>

#include "sim/mechanism/bracket_parts.h"
#include "sim/mechanism/round_slabs.h"
#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

// Floor, walls and ceiling are half spaces: drawn so thick that nothing reaches their far side, however large the room
// that the reader allows and however long the stair [m].
constexpr double kShell = 200.0;

struct RoomMaker {
  const Scene& scene;
  std::vector<RoomPart> parts;
  int things = 0;

  void add(PartKind kind, const std::string& name, RoundedPolygon outline, std::vector<Interval> stations) {
    parts.push_back({kind, name, std::move(outline), std::move(stations), 0.0, things++});
  }
  void add_pieces(std::vector<RoomPart> pieces) {
    for (RoomPart& piece : pieces) {
      piece.thing = things;
      parts.push_back(std::move(piece));
    }
    ++things;
  }
};

void add_shell(RoomMaker& maker) {
  const Room& room = maker.scene.room;
  const double floor = maker.scene.floor.level;
  const Vec2 least{-kShell, floor - kShell}, greatest{room.depth + kShell, room.ceiling + kShell};
  const Interval along{-kShell, room.length + kShell};
  maker.add(PartKind::floor, "floor", make_box(least, {greatest.x, floor}), {along});
  maker.add(PartKind::wall, "back wall", make_box(least, {0.0, greatest.y}), {along});
  maker.add(PartKind::wall, "front wall", make_box({room.depth, least.y}, greatest), {along});
  maker.add(PartKind::ceiling, "ceiling", make_box({least.x, room.ceiling}, greatest), {along});
  maker.add(PartKind::wall, "left wall", make_box(least, greatest), {{-kShell, 0.0}});
  maker.add(PartKind::wall, "right wall", make_box(least, greatest), {{room.length, room.length + kShell}});
}

void add_loft(RoomMaker& maker) {
  const Loft& loft = maker.scene.loft;
  maker.add(PartKind::loft, "loft", make_box({0.0, loft.deck - loft.thickness}, {loft.edge, loft.deck}),
            {loft.stations});
  if (!loft.guard) return;
  const LoftGuard& guard = *loft.guard;
  const IntervalSet stations = subtract(loft.stations, unite(guard.openings));
  if (stations.empty()) return;
  maker.add(PartKind::guard, "guard",
            make_box({guard.out - guard.thickness, loft.deck}, {guard.out, loft.deck + guard.height}), stations);
}

/// Pipe sizes are quoted rounded (42.2 for 42.164): a coupling no wider than this over the pipe counts as flush [m].
constexpr double kFlush = 5e-4;

void add_joints(RoomMaker& maker) {
  const Rail& rail = maker.scene.rail;
  for (const PipeJoint& joint : rail.joints) {
    if (joint.diameter <= rail.pipe.diameter + kFlush) continue;  // it stands proud of nothing that a hook would feel
    maker.add(PartKind::pipe_joint, "pipe joint", make_disc(rail.at, 0.5 * joint.diameter),
              {{joint.station - 0.5 * joint.length, joint.station + 0.5 * joint.length}});
  }
}

void add_stops(RoomMaker& maker) {
  const Rail& rail = maker.scene.rail;
  std::vector<Interval> stations;
  if (rail.stops.left) stations.push_back({rail.stations.lo, rail.stations.lo + rail.stops.width});
  if (rail.stops.right) stations.push_back({rail.stations.hi - rail.stops.width, rail.stations.hi});
  if (!stations.empty())
    maker.add(PartKind::rail_stop, kRailStop, make_disc(rail.at, 0.5 * rail.stops.diameter), stations);
}

// The pieces of one name that follow each other are one thing: a bracket's rod down and its rod back.
void add_brackets(RoomMaker& maker, double arc_tolerance) {
  std::vector<RoomPart> thing;
  for (RoomPart& piece : bracket_parts(maker.scene, arc_tolerance)) {
    if (!thing.empty() && thing.back().name != piece.name) maker.add_pieces(std::exchange(thing, {}));
    thing.push_back(std::move(piece));
  }
  if (!thing.empty()) maker.add_pieces(std::move(thing));
}

void add_obstacles(RoomMaker& maker) {
  for (std::size_t i = 0; i < maker.scene.obstacles.size(); ++i) {
    const Obstacle& obstacle = maker.scene.obstacles[i];
    const RoundedPolygon outline =
        outline_of(maker.scene, "obstacles[" + std::to_string(i) + "]", obstacle.outline, obstacle.radius);
    if (obstacle.round_post)
      maker.add_pieces(round_post_parts(obstacle));
    else
      maker.add(PartKind::obstacle, obstacle.name, outline, {obstacle.stations});
  }
}

}  // namespace

std::vector<RoomPart> round_post_parts(const Obstacle& post) {
  Vec2 lo = post.outline.front(), hi = lo;
  for (const Vec2 corner : post.outline) {
    lo = {std::min(lo.x, corner.x), std::min(lo.y, corner.y)};
    hi = {std::max(hi.x, corner.x), std::max(hi.y, corner.y)};
  }
  const double radius = 0.5 * *post.round_post, middle = 0.5 * (lo.x + hi.x), station = post.stations.middle();
  std::vector<RoomPart> parts;
  for (const RoundSlab& slab : round_slabs(radius))
    parts.push_back({PartKind::obstacle, post.name, make_box({middle - slab.half, lo.y}, {middle + slab.half, hi.y}),
                     both_ways(slab, station), slab.excess});
  return parts;
}

std::vector<RoomPart> room_parts(const Scene& scene, double arc_tolerance) {
  RoomMaker maker{scene, {}};
  add_shell(maker);
  add_loft(maker);
  maker.add(PartKind::pipe, "pipe", make_disc(scene.rail.at, 0.5 * scene.rail.pipe.diameter), {scene.rail.stations});
  add_joints(maker);
  add_stops(maker);
  add_brackets(maker, arc_tolerance);
  add_obstacles(maker);
  return maker.parts;
}

std::vector<ZonePart> zone_parts(const Scene& scene) {
  std::vector<ZonePart> parts;
  for (std::size_t i = 0; i < scene.zones.size(); ++i) {
    const Zone& zone = scene.zones[i];
    const std::string key = "keep clear[" + std::to_string(i) + "]";
    parts.push_back({zone.name, zone.when, outline_of(scene, key, zone.outline, 0.0), zone.stations});
  }
  return parts;
}

}  // namespace stowpath
