#pragma once

#include <string>
#include <vector>

#include "sim/clearance/contact_state.h"
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
  int id = -1;       ///< what contact rules name it by
  std::vector<int> rules{};  ///< see PairEnd
  int piece = 0;
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

/// A rope, from the fraction `from` to `to` of what lies between its two spots.
/// @param middles  stations of the stair's middle, from which a rope's end in the room counts [m]
Mover rope_mover(const Model& model, const Segment& segment, const RopeRun& run, Interval middles, double from,
                 double to);

/// The stair's parts and ropes that are there in a move: lock pins only while pinned, the line as it is on or off.
MoverCast stair_cast(const Model& model, const Move& move, const Segment& segment);

/// What is looked at against one section: the parts of the sections beyond it, and all ropes.
MoverCast beyond_cast(const Model& model, const Move& move, const Segment& segment, int base);

/// The room's parts, with the keep-clear zones that name `state` or "always", and the line as it is on or off.
TargetCast room_cast(const Model& model, ZoneState state, bool hooked_on);

/// The parts of one section, standing still in its own frame.
TargetCast section_cast(const Model& model, const Move& move, int section);

/// Margins of the stair against the room, by the groups that the casts gave out.
NeedTable room_needs(const Model& model, const Wander& wander);

/// With the hooks wandering as far as the scene's seat range.
NeedTable room_needs(const Model& model);

/// Margins of further sections and ropes against a section.
NeedTable section_needs(const Model& model, const Wander& wander);

/// Lets movers touch targets as far as the model's contact rules say: the pair is then held to the rule's depth, and what
/// of the mover lies outside of the rule's disc is added as movers of its own, which keep the pair's margin.
void allow_contacts(const Model& model, const ContactState& state, const NeedTable& needs, const TargetCast& targets,
                    MoverCast& movers);

/// What of a part, or of a rope, lies outside of the discs of these rules (in Model::contacts), in the order in which
/// Role::piece counts.
std::vector<Mover> outside_rules(const Model& model, const Mover& whole, const std::vector<int>& rules);

}  // namespace stowpath
