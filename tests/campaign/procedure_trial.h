#pragma once

#include <cstdint>

#include "sim/mechanism/model.h"

namespace stowpath::testing {

/// What rehearsing the moves of one scene says of the proof of them.
struct ProcedureAnswer {
  int moves = 0;          ///< rehearsed
  int touches = 0;        ///< seen while the crew were at one of them
  int on_course = 0;      ///< with the pair no farther from a pose of the move than kOnCourse
  int deciding = 0;       ///< so near to it that the touch by itself breaks the pair's margin there
  int contradicted = 0;   ///< touches that the proof denies: must be none
  double farthest = 0.0;  ///< from the course, of those on it [m]
};

/// A rehearsed pose lies on the procedure where the pair is no farther from it than this [m].
inline constexpr double kOnCourse = 2e-3;

/// Takes the scene's stair by hand along each of its moves, in the side world, and lays every touch beside the proof.
/// @param bound_scale  1; less breaks the proof, which the touches must then contradict
ProcedureAnswer try_procedure(Model model, std::uint64_t seed, double bound_scale);

}  // namespace stowpath::testing
