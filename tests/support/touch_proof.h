#pragma once

#include "sim/clearance/trial.h"
#include "sim/rehearsal/world_parts.h"

namespace stowpath::testing {

/// A touch that a side world saw while the crew were at a move.
struct RehearsedTouch {
  int part = 0;             ///< which of Model::stair
  const WorldPart& a;       ///< that part, as the world has it
  const WorldPart& b;       ///< of the room, or of a section nearer the rail
  const SectionPoses& X_W;  ///< where the sections stood
  double station = 0.0;     ///< of the stair's middle [m]
};

/// A rehearsed touch laid beside what is proven of the same pair over the same move.
///
/// The pair is displaced by `off` from a pose of the move's course, seen from the body that carries `b`. No distance
/// changes by more than things move, so on the course they come as near as `seen` + `off`: a proof that holds them
/// farther apart all through the move, or that calls a wider margin kept, is wrong, or the world is.
struct TouchAndProof {
  double seen = 0.0;        ///< exact signed clearance at the rehearsed pose [m]
  double off = 0.0;         ///< from the nearest pose of the course [m]
  double at_least = 0.0;    ///< proven of the pair over the move [m]
  double margin = 0.0;      ///< that the pair has to keep [m]
  bool held_clear = false;  ///< the dry fit says that it keeps it

  bool contradicted() const;
  /// The touch says by itself that the margin is broken on the course.
  bool breaks_margin() const { return seen + off < margin; }
};

/// @param proven  what the dry fit found in that move
TouchAndProof lay_beside(const Model& model, int move, const MoveTrial& proven, const RehearsedTouch& touch);

}  // namespace stowpath::testing
