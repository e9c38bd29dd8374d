#pragma once

#include <vector>

#include "sim/mechanism/model.h"
#include "sim/mechanism/standing.h"

namespace stowpath {

/// The procedure's steps as moves, from the standing stair (home, or the span's middle) to the parked one.
///
/// A roll of the standing stair means every station of the span and every lean of an uneven floor; without one, move 0
/// stands for it. The parked stair comes last, as a state of its own, at every station where the hoist rolls.
/// @param model  with linkage, span, home and masses already set
/// @throws SceneError, placed at the step, for one that its predecessors do not allow.
std::vector<Move> procedure_moves(const Scene& scene, const Model& model, const Standing& standing);

/// Rules of handling that the procedure breaks though its geometry may be clear: a pin pulled while no line holds the joint.
std::vector<BuildFault> procedure_faults(const Scene& scene);

}  // namespace stowpath
