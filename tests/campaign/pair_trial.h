#pragma once

#include "tests/support/pair_draw.h"

namespace stowpath::testing {

/// How the proofs' answer to one draw stands up against the slow reference.
struct PairAnswer {
  Verdict verdict = Verdict::undecided;
  bool false_clear = false;         ///< called clear where the reference shows less than the need
  bool false_interference = false;  ///< called interference where the reference finds the margin kept
  bool unexcused = false;           ///< undecided farther from the margin than the resolution explains
};

/// @param least_too  also check the enclosure of the least clearance
PairAnswer try_pair(const PairDraw& draw, bool least_too);

}  // namespace stowpath::testing
