#include "sim/clearance/pairs.h"

#include <algorithm>
#include <cmath>

namespace stowpath {
namespace {

/// The share of the model's play that is the scene's seat range.
double seat_play(const Model& model) { return wander_reach(assumed_wander(model)); }

bool carries_rail(PartKind room) { return room == PartKind::bracket || room == PartKind::pipe_joint; }

/// What the pivot's nominal place leaves open: the hooks' wander, and what a bent pipe adds.
Need with_play(const Model& model, const Wander& wander, double growth, bool silent, double margin) {
  const double reach = wander_reach(wander);
  const double besides = std::max(0.0, model.hook_play - seat_play(model)) + growth;
  return {true, silent, margin, reach + besides, reach};
}

}  // namespace

Need room_need(const Model& model, const Wander& wander, PartKind stair, PartKind room) {
  if (room == PartKind::zone) return with_play(model, wander, wander.growth, true, 0.0);
  const bool hook = stair == PartKind::hook;
  const double margin = hook && carries_rail(room) ? model.margin.hook : model.margin.standard;
  Need need = with_play(model, wander, hook ? wander.hook_growth : wander.growth, false, margin);
  if (room == PartKind::floor) need.play += model.floor_uneven;
  return need;
}

Need room_need(const Model& model, PartKind stair, PartKind room) {
  return room_need(model, assumed_wander(model), stair, room);
}

Need section_need(const Model& model, const Wander& wander, PartKind near, PartKind far) {
  if (near != PartKind::line && far != PartKind::line) return {true, false, model.margin.self, 0.0, 0.0};
  Need need = with_play(model, wander, wander.growth, false, model.margin.self);
  need.wander = 0.0;  // its directions are the room's, not the section's: all of it counts
  return need;
}

Need contact_need(double depth) { return std::isinf(depth) ? Need{} : Need{true, true, -depth, 0.0, 0.0}; }

}  // namespace stowpath
