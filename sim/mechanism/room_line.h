#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// The line from the ceiling point over its leads to the hand, run by run. None for a hoist that rolls, which takes its
/// line along (see rope_runs).
/// @throws SceneError where a hoist that rolls has leads: its line would lie elsewhere at every station.
std::vector<RoomRope> led_off_runs(const Scene& scene);

/// What hangs plumb from the ceiling point while the line is not hooked on, down to `hangs_to` [m]; none for a hoist
/// that rolls.
std::vector<RoomRope> hanging_line(const Scene& scene, double hangs_to);

}  // namespace stowpath
