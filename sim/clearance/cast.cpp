#include "sim/clearance/cast.h"

#include <algorithm>
#include <cmath>

#include "sim/clearance/pairs.h"

namespace stowpath {
namespace {

/// Slabs of an oblique rope are no longer along the rail than this [m].
constexpr double kRopeSlab = 0.02;

constexpr int kKinds = static_cast<int>(PartKind::lead_line) + 1;

int group_of(PartKind kind, bool second = false) { return static_cast<int>(kind) + (second ? kKinds : 0); }

PartKind kind_of(int group) { return static_cast<PartKind>(group % kKinds); }

bool there(const StairPart& part, const Move& move) {
  if (!part.only_pinned) return true;
  const std::size_t hinge = static_cast<std::size_t>(std::max(0, part.hinge));
  return hinge < move.pinned.size() && move.pinned[hinge];
}

/// Bent rods are covered from outside.
double excess_of(const Model& model, const StairPart& part) {
  return std::max(part.kind == PartKind::hook ? model.arc_tolerance : 0.0, part.excess);
}

/// Stations of a rope's end from the stair's middle. An end in the room stays put, unless the hoist rolls with the
/// stair.
Interval from_middle(const RopeEnd& end, double station) {
  return end.section < 0 && !end.rolls ? end.stations + -station : end.stations;
}

/// How far a rope runs aslant along the rail [m].
double aslant(Interval a, Interval b) { return std::max(std::abs(b.lo - a.lo), std::abs(b.hi - a.hi)); }

void add_part(const Model& model, int index, MoverCast& cast) {
  const StairPart& part = model.stair[static_cast<std::size_t>(index)];
  cast.movers.push_back(part_mover(model, part));
  cast.roles.push_back({part.kind, part.name, 0, part.section, index});
}

/// A rope that runs aslant along the rail is enclosed in slabs of stations, each short enough to stand for the rope.
void add_rope(const Model& model, int index, double station, MoverCast& cast) {
  const RopeRun& run = model.ropes[static_cast<std::size_t>(index)];
  const double skew = aslant(from_middle(run.a, station), from_middle(run.b, station));
  const int slabs = std::max(1, static_cast<int>(std::ceil(skew / kRopeSlab)));
  for (int k = 0; k < slabs; ++k) {
    const double u0 = static_cast<double>(k) / slabs, u1 = static_cast<double>(k + 1) / slabs;
    cast.movers.push_back(rope_mover(run, station, u0, u1));
    cast.roles.push_back({run.kind, run.name, 0, std::max(run.a.section, run.b.section), index});
  }
}

/// What a rope's end in the room is made fast to: within the margin of that end, all along its way where it rolls.
bool holds_a_line(const Model& model, const RoomPart& part) {
  const Outline outline(part.outline);
  for (const RopeRun& run : model.ropes) {
    for (const RopeEnd* end : {&run.a, &run.b}) {
      if (end->section >= 0) continue;
      const double d = signed_distance(Outline(make_disc(end->at, run.radius)), outline);
      const Interval meant = end->rolls ? model.span : Interval{0.0, 0.0};
      const Gaps gaps = rail_gaps({&end->stations, 1}, part.stations, meant, false);
      if (prism_clearance(d, gaps.most, gaps.least_overlap) < model.margin.standard) return true;
    }
  }
  return false;
}

}  // namespace

Mover part_mover(const Model& model, const StairPart& part) {
  Mover mover;
  mover.body = part.section;
  mover.outline = Outline(part.outline);
  mover.stations = part.stations;
  mover.excess = excess_of(model, part);
  mover.group = group_of(part.kind);
  return mover;
}

Mover rope_mover(const RopeRun& run, double station, double from, double to) {
  const Interval a = from_middle(run.a, station), b = from_middle(run.b, station);
  const auto along = [&](double u) { return Interval{a.lo + (b.lo - a.lo) * u, a.hi + (b.hi - a.hi) * u}; };
  const Interval stations = hull(along(from), along(to));
  Mover mover;
  mover.rope = true;
  mover.a = {run.a.section, run.a.at};
  mover.b = {run.b.section, run.b.at};
  mover.rope_from = from;
  mover.rope_to = to;
  mover.rope_radius = run.radius;
  mover.group = group_of(run.kind);
  mover.stations = {{stations.lo - run.radius, stations.hi + run.radius}};
  mover.excess = aslant(a, b) > 0.0 ? stations.length() + run.radius : 0.0;
  return mover;
}

PairEnd end_of(const Role& role) { return {role.kind, role.index, role.section}; }

PairEnd end_of(const Mover& mover, const Role& role) {
  return {role.kind, role.index, role.section, mover.rope_from, mover.rope_to};
}

double thing_number(const Target& target, const Role& role, Interval stretch) {
  return target.stations.size() > 1 ? stretch.middle() : static_cast<double>(role.thing);
}

MoverCast stair_cast(const Model& model, const Move& move, double station) {
  MoverCast cast;
  for (int i = 0; i < static_cast<int>(model.stair.size()); ++i) {
    if (there(model.stair[static_cast<std::size_t>(i)], move)) add_part(model, i, cast);
  }
  for (int i = 0; i < static_cast<int>(model.ropes.size()); ++i) {
    const bool always = !model.ropes[static_cast<std::size_t>(i)].only_hooked_on;
    if (move.hooked_on || always) add_rope(model, i, station, cast);
  }
  return cast;
}

MoverCast further_cast(const Model& model, const Move& move, double station, int base) {
  MoverCast cast;
  for (int i = 0; i < static_cast<int>(model.stair.size()); ++i) {
    const StairPart& part = model.stair[static_cast<std::size_t>(i)];
    if (part.section <= base || !there(part, move)) continue;
    add_part(model, i, cast);
    cast.movers.back().group = group_of(part.kind, part.section > base + 1);
  }
  for (int i = 0; i < static_cast<int>(model.ropes.size()); ++i) {
    const RopeRun& run = model.ropes[static_cast<std::size_t>(i)];
    const bool picked_here = run.a.section == base || run.b.section == base;
    if (run.kind == PartKind::line && move.hooked_on && !picked_here) add_rope(model, i, station, cast);
  }
  return cast;
}

TargetCast room_cast(const Model& model, ZoneState state) {
  TargetCast cast;
  std::vector<Target> targets;
  for (const RoomPart& part : model.room) {
    targets.push_back(
        {Outline(part.outline), part.stations, part.excess, group_of(part.kind, holds_a_line(model, part))});
    cast.roles.push_back({part.kind, part.name, part.thing, -1, static_cast<int>(cast.roles.size())});
  }
  for (int i = 0; i < static_cast<int>(model.zones.size()); ++i) {
    const ZonePart& zone = model.zones[static_cast<std::size_t>(i)];
    const auto names = [&](ZoneState s) { return std::find(zone.when.begin(), zone.when.end(), s) != zone.when.end(); };
    if (!names(state) && !names(ZoneState::always)) continue;
    targets.push_back({Outline(zone.outline), {zone.stations}, 0.0, group_of(PartKind::zone)});
    cast.roles.push_back({PartKind::zone, zone.name, -1 - static_cast<int>(cast.roles.size()), -1, i});
  }
  cast.targets = TargetSet(std::move(targets));
  return cast;
}

TargetCast section_cast(const Model& model, const Move& move, int section) {
  TargetCast cast;
  std::vector<Target> targets;
  for (int i = 0; i < static_cast<int>(model.stair.size()); ++i) {
    const StairPart& part = model.stair[static_cast<std::size_t>(i)];
    if (part.section != section || !there(part, move)) continue;
    targets.push_back({Outline(part.outline), part.stations, excess_of(model, part), group_of(part.kind)});
    cast.roles.push_back({part.kind, part.name, static_cast<int>(targets.size()), section, i});
  }
  cast.targets = TargetSet(std::move(targets));
  return cast;
}

NeedTable room_needs(const Model& model, const Wander& wander) {
  NeedTable needs(kKinds, 2 * kKinds);
  needs.wander = wander;
  for (int mover = 0; mover < kKinds; ++mover) {
    for (int target = 0; target < 2 * kKinds; ++target) {
      Need need = room_need(model, wander, kind_of(mover), kind_of(target));
      if (kind_of(mover) == PartKind::line && target >= kKinds) need = {};
      needs.at(mover, target) = need;
    }
  }
  return needs;
}

NeedTable room_needs(const Model& model) { return room_needs(model, assumed_wander(model)); }

NeedTable section_needs(const Model& model, bool folded) {
  NeedTable needs(2 * kKinds, kKinds);
  for (int mover = 0; mover < 2 * kKinds; ++mover) {
    for (int target = 0; target < kKinds; ++target) {
      needs.at(mover, target) = section_need(model, kind_of(target), kind_of(mover), mover < kKinds, folded);
    }
  }
  return needs;
}

}  // namespace stowpath
