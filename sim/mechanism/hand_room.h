#pragma once

#include <optional>

#include "sim/mechanism/model.h"

namespace stowpath {

/// The room that a person needs to stand and pull, or to turn a crank, as a keep-clear zone of its own: 0.6 m square about
/// the hand and 2.0 m high (judgement). It counts while the stair moves and when it is parked. None for a motor, and none
/// without a ceiling point.
std::optional<ZonePart> hand_room(const Scene& scene);

}  // namespace stowpath
