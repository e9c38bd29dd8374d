#pragma once

#include <cstdint>
#include <string>

#include "tests/support/proof_maker.h"

namespace stowpath::testing {

/// One random pair with its motion: what the campaign and the metamorphic tests ask the proofs.
struct PairDraw {
  std::string motion;     ///< "swing", "fold", "hang", "drag", "roll", "slide", "together", "self"
  std::string placement;  ///< how the obstacle was set: "in the way", "near", "anywhere", "grazing", "twin"
  double scale = 1.0;     ///< sizes are those of a stair times this
  ProofMaker maker;       ///< one mover, one target
  ProofOptions options;
};

/// The same seed gives the same draw. Sizes from 1e-4 m to 50 m, thin wires in the way, slivers, coincident edges,
/// margins within 1e-9 m to 1e-3 m of the true least clearance, stretches along the rail that nearly meet.
PairDraw draw_pair(std::uint64_t seed);

}  // namespace stowpath::testing
