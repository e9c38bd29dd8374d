#pragma once

#include <array>
#include <string>
#include <vector>

#include "sim/clearance/dry_fit.h"
#include "sim/clearance/encounter.h"

namespace stowpath {

/// What was proven of the ropes of one line against those of another, over a segment.
struct RopePairs {
  std::vector<Encounter> encounters;
  double least = 1.0;      ///< proven: none comes closer; beyond a metre not told apart [m]
  double witnessed = 1.0;  ///< at `closest_at` [m]
  std::array<std::string, 2> closest;
  Configuration closest_at;
  WalkCounts counts;
};

/// Each run of the hoist's line against each of the fold line, both moving: halved until the distance at the middle
/// outweighs what the two together can move.
RopePairs rope_pairs(const Model& model, const Move& move, const Segment& segment, const NeedTable& needs,
                     const DryFitOptions& options);

}  // namespace stowpath
