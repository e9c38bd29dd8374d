#pragma once

#include <vector>

#include "sim/clearance/piece_walk.h"
#include "sim/clearance/stage.h"
#include "sim/clearance/verdict.h"

namespace stowpath {

/// A stretch of a segment over which a pair is not proven clear.
struct Span {
  int mover = 0, target = 0;  ///< numbers in the stage
  double u0 = 0.0, u1 = 1.0;  ///< interference: from where to where the margin is broken; undecided: all the stretch
  Verdict verdict = Verdict::undecided;
  bool by_play = false;             ///< undecided everywhere only by play or excess, not by resolution
  double open0 = 0.0, open1 = 1.0;  ///< the whole stretch that is not proven clear; holds [u0, u1]
};

struct ProofOptions {
  double resolution = 1.7453292519943296e-4;  ///< joints' half-turn below which a piece is not halved again [rad]
  double roll_resolution = 1e-4;              ///< the same for the way along the rail [m]
  double bound_scale = 1.0;  ///< 1; tests make the displacement bound too small with it, to see the proof fall
};

struct Proof {
  std::vector<Span> spans;  ///< by mover, target, u; touching pieces of one pair are one span; empty: all clear
  WalkCounts counts;
};

/// Decides for every pair of the stage, over all of the segment, whether it keeps its need.
///
/// A piece with clearance d at its middle, over which nothing moves by more than D, is clear if d - D reaches the
/// needed margin and play, and violates all over if d + D stays below the margin; else it is halved. Spans hold what is
/// left. Sound whatever the resolution: what is not in a span's open stretch is proven clear.
Proof prove(const ProofStage& stage, const ProofOptions& options = {});

/// Where within [u0, u1] the pair's violation begins or ends: bisection on the nominal clearance down to 1e-7 of the
/// joints' turn. `violating_end` tells which end of the bracket violates (0 or 1).
double refine_edge(const ProofStage& stage, int mover, int target, double u0, double u1, int violating_end);

/// The pair's nominal side-view distance at u, and its signed prism clearance with the stations meant there [m].
struct PairAt {
  double side_view = 0.0;
  double clearance = 0.0;
  Separation witness;  ///< in the base frame
};
PairAt look_at_pair(const ProofStage& stage, int mover, int target, double u);

/// The same for a mover and a target that need not be on the stage.
PairAt look_at_pair(const ProofStage& stage, const Mover& mover, const Target& target, double u);

/// A certified least clearance over a segment.
struct Least {
  double at_least = 0.0;  ///< proven [m]
  double at_most = 0.0;   ///< witnessed [m]
  int mover = -1, target = -1;
  double u = 0.0;
  WalkCounts counts;
};

/// Least signed clearance over the segment of all pairs that are checked and not silent, known to within `tolerance`.
/// @param horizon  clearances beyond it are not told apart: at_least and at_most are then no more than it [m]
Least least_clearance(const ProofStage& stage, double tolerance, double horizon);

/// The same for one pair over [u0, u1], silent or not.
Least least_of_pair(const ProofStage& stage, int mover, int target, double u0, double u1, double tolerance);

}  // namespace stowpath
