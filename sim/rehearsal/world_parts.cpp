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
          part.kind == PartKind::hook ? model.arc_tolerance : 0.0};
}

bool met_by_some(const std::vector<WorldPart>& stair, const std::vector<Interval>& stations) {
  return std::any_of(stair.begin(), stair.end(),
                     [&](const WorldPart& part) { return share_stations(part.stations, stations); });
}

// What the world lets pass through each other, by kind: it certifies nothing, and its own skins would jam what is built
// to fit. The proof has rules of its own, by thing and place.
bool room_pair(const WorldPart& stair, const WorldPart& room, bool hooks_on_pipe) {
  if (stair.kind != PartKind::hook) return true;
  if (room.kind == PartKind::pipe) return !hooks_on_pipe;
  return room.kind != PartKind::rail_stop;
}

bool section_pair(const WorldPart& near, const WorldPart& far, bool folded) {
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
  const std::vector<WorldPart> stair = parts;
  for (const RoomPart& part : model.room)
    if (part.when != LineState::hooked_off && met_by_some(stair, part.stations))
      parts.push_back(
          {part.kind, part.name, -1, -1, false, Outline(part.outline), part.outline, part.stations, {}, part.excess});
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
