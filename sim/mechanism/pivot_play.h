#pragma once

#include "sim/mechanism/model.h"

namespace stowpath {

/// How far above its nominal place the pivot can stand while the contact is that far off the pipe's crown, with that
/// slack of the hooks on the pipe [m].
double wander_rise(double slack, Interval touch);

/// How much the sections above a dragged hinge turn for each metre that the pivot shifts up or down, the foot staying on
/// the floor: one over the hinge's lever, see docs/method.md, "The hook's play" [rad/m].
/// @param least_lean  of the drag, with the pivot where it makes the lean least [rad]
double drag_turn(const Linkage& linkage, const Segment& drag, double least_lean);

/// Lets a move count with the hooks' contact anywhere in `touch`.
///
/// The pivot's play shifts the whole stair, but where its foot stands on the floor: then the lean follows. Standing, the
/// leans go on down to that of the highest pivot; in a drag, parts may be further off by what the sections above turn
/// more, for the pivot's rise and for the floor's unevenness under the foot.
void allow_play(const Model& model, Interval touch, Move& move);

/// The same for every move, as far as the scene's seat range goes.
void allow_assumed_play(Model& model);

/// Whether a move counts with more than the scene's seat range.
bool counts_further(const Model& model, const Move& move);

}  // namespace stowpath
