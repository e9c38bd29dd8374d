#pragma once

#include <random>

#include "sim/hoist/statics.h"
#include "sim/hoist/virtual_work.h"

namespace stowpath::testing {

/// A made-up stair on a made-up line: one to three sections, hinges on either face, a line of one to six parts, some
/// with a rope that folds the last section, some with the foot on the floor.
struct RandomRig {
  Linkage linkage;
  Configuration pose;
  std::vector<SectionMass> masses;
  Rigging line;
  std::optional<Rigging> fold_line;
  Vec2 axle;
  LeanRates rates{};  ///< of a motion in the making: each section its own
};
RandomRig random_rig(std::mt19937& random);

/// A length with unit in which random draws are made: uniform on [lo, hi].
double draw(std::mt19937& random, double lo, double hi);

}  // namespace stowpath::testing
