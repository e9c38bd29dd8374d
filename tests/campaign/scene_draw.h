#pragma once

#include <cstdint>

#include "sim/mechanism/model.h"

namespace stowpath::testing {

/// A random stair of one to three sections in a random room, with a procedure: stand, lift, fold, hang, drag, together,
/// park. Every part of the stair and of the room has a name of its own.
Model draw_scene(std::uint64_t seed);

}  // namespace stowpath::testing
