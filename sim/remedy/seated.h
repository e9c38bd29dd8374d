#pragma once

#include "sim/hoist/seat.h"

namespace stowpath {

/// Lets the model's moves count with the contact where statics have it wander further than the scene's seat range, and
/// with all of the hooks' slack where they are not held.
void count_with_seat(const SeatReport& report, Model& model);

/// Seats a model of a scene that differs in its measurements alone as `like` is: the same wander, its own leans.
void seat_alike(const Model& like, Model& model);

}  // namespace stowpath
