#include "sim/clearance/pairs.h"

#include <algorithm>

namespace stowpath {
namespace {

constexpr Need kNotLookedAt{};

Need meant(double fit) { return {true, true, -fit, 0.0, 0.0}; }

/// The share of the model's play that is the scene's seat range.
double seat_play(const Model& model) { return wander_reach(assumed_wander(model)); }

bool carries_rail(PartKind room) { return room == PartKind::bracket || room == PartKind::pipe_joint; }

/// What the pivot's nominal place leaves open: the hooks' wander, and what a bent pipe adds.
Need with_play(const Model& model, const Wander& wander, double growth, bool silent, double margin) {
  const double reach = wander_reach(wander);
  const double besides = std::max(0.0, model.hook_play - seat_play(model)) + growth;
  return {true, silent, margin, reach + besides, reach};
}

Need hook_need(const Model& model, const Wander& wander, PartKind room) {
  // The hook's circle holds the pipe whatever the lean: nothing to prove there. Stops are there to be run against.
  if (room == PartKind::pipe || room == PartKind::rail_stop) return kNotLookedAt;
  const double margin = carries_rail(room) ? model.margin.hook : model.margin.standard;
  return with_play(model, wander, wander.hook_growth, false, margin);
}

}  // namespace

Need room_need(const Model& model, const Wander& wander, PartKind stair, PartKind room) {
  if (room == PartKind::zone) return with_play(model, wander, wander.growth, true, 0.0);
  if (stair == PartKind::hook) return hook_need(model, wander, room);
  // A lean that belongs to a pipe bent down, or to a pivot off its seat, shown at the nominal pivot, presses the caster
  // in by the difference; and a wheel on edge stands on a corner once its section turns.
  if (stair == PartKind::caster && room == PartKind::floor)
    return meant(model.floor_uneven + model.pipe_sag + wander.rise + corner_dip(model.wheels) + kFit);
  if (stair == PartKind::line && room == PartKind::ceiling) return kNotLookedAt;  // it is tied off there
  Need need = with_play(model, wander, wander.growth, false, model.margin.standard);
  if (room == PartKind::floor) need.play += model.floor_uneven;
  return need;
}

Need room_need(const Model& model, PartKind stair, PartKind room) {
  return room_need(model, assumed_wander(model), stair, room);
}

Need section_need(const Model& model, PartKind near, PartKind far, bool adjacent, bool folded) {
  if (near == PartKind::fold_line || far == PartKind::fold_line) return kNotLookedAt;  // it lies on the sections
  if (near == PartKind::lock_pin || far == PartKind::lock_pin)
    return kNotLookedAt;  // it is there only while nothing turns
  if (adjacent && (near == PartKind::hinge || far == PartKind::hinge)) return kNotLookedAt;  // leaves on both sections
  const bool rails = near == PartKind::side_rail && far == PartKind::side_rail;
  const bool bridged = (near == PartKind::scab || near == PartKind::spacer_block) && far == PartKind::side_rail;
  if (adjacent && !folded && (rails || bridged)) return meant(kFit);
  return {true, false, model.margin.self, 0.0, 0.0};
}

}  // namespace stowpath
