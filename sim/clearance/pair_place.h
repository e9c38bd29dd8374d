#pragma once

#include <vector>

#include "sim/geometry/interval.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// One side of a pair, by where it stands in the model.
struct PairEnd {
  PartKind kind = PartKind::extra;
  int index = -1;                         ///< in Model::stair, ropes, room or zones, as kind and section say
  int section = -1;                       ///< from 0; -1: of the room
  double rope_from = 0.0, rope_to = 1.0;  ///< the stretch of a rope that it is
  std::vector<int> rules{};  ///< contact rules (in Model::contacts) whose discs it is cut outside of
  int piece = 0;             ///< which of the pieces left
};

/// Where a pair comes closest: enough to look at it again, in this model or in one of the same build.
struct PairPlace {
  int move = -1;     ///< which of Model::moves; -1: not known
  int segment = 0;   ///< of the move
  int base = -1;     ///< the section that carries the target, from 0; -1: the room
  PairEnd mover, target;
  Interval piece{0.0, 1.0};  ///< of the segment, over which the pair was looked at
  double u = 0.0;            ///< progress along the whole segment
};

}  // namespace stowpath
