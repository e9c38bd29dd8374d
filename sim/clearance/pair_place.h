#pragma once

#include <string>
#include <vector>

#include "sim/clearance/stage.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// One side of a pair, by where it stands in the model.
struct PairEnd {
  PartKind kind = PartKind::extra;
  int index = -1;                         ///< in Model::stair, ropes, room or zones, as kind and section say
  int section = -1;                       ///< from 0; -1: of the room
  double rope_from = 0.0, rope_to = 1.0;  ///< the stretch of a rope that it is
};

/// Where a pair comes closest: enough to look at it again, in this model or in one of the same build.
struct PairPlace {
  int move = -1;     ///< which of Model::moves; -1: not known
  int segment = 0;   ///< of the move
  int base = kRoom;  ///< the section that carries the target, or the room
  PairEnd mover, target;
  Interval piece{0.0, 1.0};  ///< of the segment, over which the pair was looked at
  double u = 0.0;            ///< progress along the whole segment
};

/// The mover of a pair, as the proofs see it.
/// @param station  of the stair's middle where the segment begins [m]
Mover mover_of(const Model& model, const PairEnd& end, double station);

/// The target of a pair, in its base's frame.
Target target_of(const Model& model, const PairEnd& end);

/// What reports call the thing of the room, or the part, that the end is.
const std::string& name_of(const Model& model, const PairEnd& end);

/// The pairs of the same stage whose clearance at the place's pose is within `tie` of `clearance`; of a zone, those of
/// zones, else those that count for the least clearance. The place's own pair is among them if it is that close.
std::vector<PairPlace> tied_pairs(const Model& model, const PairPlace& place, double clearance, double tie);

}  // namespace stowpath
