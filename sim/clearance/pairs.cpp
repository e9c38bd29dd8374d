#include "sim/clearance/pairs.h"

namespace stowpath {
namespace {

constexpr Need kNotLookedAt{};

Need meant(double fit) { return {true, true, -fit, 0.0}; }

bool carries_rail(PartKind room) { return room == PartKind::bracket || room == PartKind::pipe_joint; }

Need hook_need(const Model& model, PartKind room) {
  // The hook's circle holds the pipe whatever the lean: nothing to prove there. Stops are there to be run against.
  if (room == PartKind::pipe || room == PartKind::rail_stop) return kNotLookedAt;
  const double margin = carries_rail(room) ? model.margin.hook : model.margin.standard;
  return {true, false, margin, model.hook_play};
}

}  // namespace

Need room_need(const Model& model, PartKind stair, PartKind room) {
  if (room == PartKind::zone) return {true, true, 0.0, model.hook_play};
  if (stair == PartKind::hook) return hook_need(model, room);
  // A lean that belongs to a pipe bent down, shown at the nominal pivot, presses the caster in by the difference.
  if (stair == PartKind::caster && room == PartKind::floor) return meant(model.floor_uneven + model.pipe_sag + kFit);
  if (stair == PartKind::line && room == PartKind::ceiling) return kNotLookedAt;  // it is tied off there
  const double floor = room == PartKind::floor ? model.floor_uneven : 0.0;
  return {true, false, model.margin.standard, model.hook_play + floor};
}

Need section_need(const Model& model, PartKind near, PartKind far, bool adjacent, bool folded) {
  if (near == PartKind::fold_line || far == PartKind::fold_line) return kNotLookedAt;  // it lies on the sections
  if (near == PartKind::lock_pin || far == PartKind::lock_pin)
    return kNotLookedAt;  // it is there only while nothing turns
  if (adjacent && (near == PartKind::hinge || far == PartKind::hinge)) return kNotLookedAt;  // leaves on both sections
  const bool rails = near == PartKind::side_rail && far == PartKind::side_rail;
  const bool bridged = (near == PartKind::scab || near == PartKind::spacer_block) && far == PartKind::side_rail;
  if (adjacent && !folded && (rails || bridged)) return meant(kFit);
  return {true, false, model.margin.self, 0.0};
}

}  // namespace stowpath
