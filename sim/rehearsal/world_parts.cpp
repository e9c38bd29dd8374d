#include "sim/rehearsal/world_parts.h"

#include <algorithm>
#include <utility>

namespace stowpath {

namespace {

bool share_stations(const std::vector<Interval>& a, const std::vector<Interval>& b) {
  for (const Interval& i : a)
    for (const Interval& j : b)
      if (i.lo < j.hi && j.lo < i.hi) return true;
  return false;
}

std::vector<Interval> shifted(std::vector<Interval> stations, double by) {
  for (Interval& stretch : stations) stretch = stretch + by;
  return stations;
}

WorldPart stair_part(const Model& model, const StairPart& part, double station) {
  return {part.kind,
          part.name,
          part.section,
          part.hinge,
          part.only_pinned,
          Outline(part.outline),
          part.outline,
          shifted(part.stations, station),
          {},
          std::max(part.kind == PartKind::hook ? model.arc_tolerance : 0.0, part.excess),
          false,
          part.kind == PartKind::caster && !model.wheels.stations.empty()};
}

WorldPart wheel_on_floor(const Model& model, double station) {
  const Wheels& wheels = model.wheels;
  const RoundedPolygon disc = make_disc(wheels.axle, wheels.radius);
  return {PartKind::caster,
          "caster",
          wheels.section,
          -1,
          false,
          Outline(disc),
          disc,
          shifted(wheels.stations, station),
          {},
          0.0,
          true};
}

bool is_shell(PartKind kind) { return kind == PartKind::floor || kind == PartKind::wall || kind == PartKind::ceiling; }

// Of a box, the part within a margin of the room.
RoundedPolygon near_room(const Model& model, const RoomPart& part) {
  constexpr double kThick = 1.0, kBeside = 2.0;  // drawn of a wall, and of the floor past the walls [m]
  const Interval out = model.inside.out, up = model.inside.up;
  if (!is_shell(part.kind) || out.length() <= 0.0) return part.outline;
  const double beside = part.kind == PartKind::floor ? kBeside : kThick;
  RoundedPolygon cut = part.outline;
  for (Vec2& corner : cut.core)
    corner = {std::clamp(corner.x, out.lo - beside, out.hi + beside),
              std::clamp(corner.y, up.lo - kThick, up.hi + kThick)};
  return cut;
}

WorldPart room_thing(const Model& model, const RoomPart& part) {
  const RoundedPolygon shape = near_room(model, part);
  return {part.kind, part.name, -1, -1, false, Outline(shape), shape, part.stations, {}, part.excess};
}

bool met_by_some(const std::vector<WorldPart>& stair, const std::vector<Interval>& stations) {
  return std::any_of(stair.begin(), stair.end(),
                     [&](const WorldPart& part) { return share_stations(part.stations, stations); });
}

// What the world lets pass through each other, by kind: it certifies nothing, and its own skins would jam what is built
// to fit. The proof has rules of its own, by thing and place.
bool room_pair(const WorldPart& stair, const WorldPart& room, bool hooks_on_pipe) {
  if (room.kind == PartKind::floor ? stair.on_edge : stair.rolls) return false;
  if (stair.kind != PartKind::hook) return true;
  if (room.kind == PartKind::pipe) return !hooks_on_pipe;
  return room.kind != PartKind::rail_stop;
}

bool section_pair(const WorldPart& near, const WorldPart& far, bool folded) {
  if (near.rolls || far.rolls) return false;
  if (near.kind == PartKind::lock_pin || far.kind == PartKind::lock_pin) return false;
  if (far.section != near.section + 1) return true;
  if (near.kind == PartKind::hinge || far.kind == PartKind::hinge) return false;
  const bool bridges = near.kind == PartKind::side_rail || near.kind == PartKind::scab || near.kind == PartKind::spacer_block;
  return folded || !(bridges && far.kind == PartKind::side_rail);
}

Outline in_room(const WorldPart& part, const SectionPoses& X_W) {
  if (part.section < 0) return part.outline;
  Outline placed;
  placed.place(part.outline, X_W[static_cast<std::size_t>(part.section)]);
  return placed;
}

}  // namespace

std::vector<WorldPart> world_parts(const Model& model, double station) {
  std::vector<WorldPart> parts;
  for (const StairPart& part : model.stair) parts.push_back(stair_part(model, part, station));
  if (!model.wheels.stations.empty()) parts.push_back(wheel_on_floor(model, station));
  const std::vector<WorldPart> stair = parts;
  for (const RoomPart& part : model.room)
    if (part.kind != PartKind::lead_line && met_by_some(stair, part.stations)) parts.push_back(room_thing(model, part));
  for (const ZonePart& zone : model.zones)
    if (met_by_some(stair, {zone.stations}))
      parts.push_back({PartKind::zone,
                       zone.name,
                       -1,
                       -1,
                       false,
                       Outline(zone.outline),
                       zone.outline,
                       {zone.stations},
                       zone.when,
                       0.0});
  return parts;
}

bool can_touch(const WorldPart& a, const WorldPart& b, bool hooks_on_pipe, bool folded) {
  if (a.section == b.section || !share_stations(a.stations, b.stations)) return false;
  if (a.section < 0) return room_pair(b, a, hooks_on_pipe);
  if (b.section < 0) return room_pair(a, b, hooks_on_pipe);
  return a.section < b.section ? section_pair(a, b, folded) : section_pair(b, a, folded);
}

double part_distance(const WorldPart& a, const WorldPart& b, const SectionPoses& X_W) {
  return signed_distance(in_room(a, X_W), in_room(b, X_W));
}

}  // namespace stowpath
