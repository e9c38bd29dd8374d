#pragma once

#include <cstdint>

#include "sim/mechanism/model.h"

namespace stowpath::testing {

/// How what a side world saw of one scene stands up against exact distances.
struct RehearsalAnswer {
  int touches = 0;        ///< begun
  int looks = 0;          ///< poses at which all pairs were measured
  int unconfirmed = 0;    ///< touches of parts that are farther apart than the world's skin
  int missed = 0;         ///< pairs well into each other that the world did not see touch
  double greatest = 0.0;  ///< distance of parts that were seen to touch [m]
};

/// Starts the scene's stair at a random pose of its moves, joints free, and lets it fall for a second while it is
/// pushed about.
RehearsalAnswer try_rehearsal(const Model& model, std::uint64_t seed);

}  // namespace stowpath::testing
