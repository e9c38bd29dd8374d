#pragma once

#include "sim/hoist/seat.h"

namespace stowpath {

/// Lets the model's moves count with the contact where statics have it wander further than the scene's seat range, and
/// with all of the hooks' slack where they are not held.
///
/// The wander shifts the whole stair, but where its foot stands on the floor: then the lean follows. Standing, the
/// leans go on down to that of the highest pivot; in a drag, the play grows by what the sections above turn more.
void count_with_seat(const Scene& scene, const SeatReport& report, Model& model);

/// Seats a model of a scene that differs in its measurements alone as `like` is: the same wander, its own leans.
void seat_alike(const Scene& scene, const Model& like, Model& model);

}  // namespace stowpath
