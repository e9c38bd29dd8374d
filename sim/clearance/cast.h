#pragma once

#include <string>
#include <vector>

#include "sim/clearance/pair_place.h"
#include "sim/clearance/stage.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// Who a mover or a target is, for the findings.
struct Role {
  PartKind kind = PartKind::extra;
  std::string name;
  int thing = 0;     ///< pieces of one thing of the room share a number
  int section = -1;  ///< of the stair's parts, from 0; -1: the room
  int index = -1;    ///< in the model's list of stair, ropes, room or zones, as kind and section say
};

/// Where a target, or a mover, stands in the model.
PairEnd end_of(const Role& role);
PairEnd end_of(const Mover& mover, const Role& role);

/// What tells one met thing from its likes: the place of one of several equal ones, else the thing's own number.
double thing_number(const Target& target, const Role& role, Interval stretch);

/// Movers or targets with their roles beside them.
struct MoverCast {
  std::vector<Mover> movers;
  std::vector<Role> roles;
};
struct TargetCast {
  TargetSet targets;
  std::vector<Role> roles;
};

/// One part of the stair as a mover.
Mover part_mover(const Model& model, const StairPart& part);

/// The stretch of a rope between the fractions `from` and `to` of its length.
/// @param station  of the stair's middle: where a rope's end in the room counts from [m]
Mover rope_mover(const RopeRun& run, double station, double from, double to);

/// The stair's parts and ropes that are there in a move: lock pins only while pinned, the line only while hooked on.
/// @param station  of the stair's middle: where a rope's end in the room counts from [m]
MoverCast stair_cast(const Model& model, const Move& move, double station);

/// The parts of the sections beyond `base`, with the hoist line where it is not picked on `base`.
MoverCast further_cast(const Model& model, const Move& move, double station, int base);

/// The room's parts, with the keep-clear zones that name `state` or "always".
TargetCast room_cast(const Model& model, ZoneState state);

/// The parts of one section, standing still in its own frame.
TargetCast section_cast(const Model& model, const Move& move, int section);

/// Needs of the stair against the room, by the groups that the casts gave out. The line needs nothing of what its own
/// end is made fast to.
NeedTable room_needs(const Model& model, const Wander& wander);

/// With the hooks wandering as far as the scene's seat range.
NeedTable room_needs(const Model& model);

/// Needs of further sections against a section nearer the rail.
/// @param folded  the hinge between is folded by a quarter turn or more
NeedTable section_needs(const Model& model, bool folded);

}  // namespace stowpath
