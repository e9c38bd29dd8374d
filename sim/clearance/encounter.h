#pragma once

#include <vector>

#include "sim/clearance/cast.h"
#include "sim/clearance/proof.h"

namespace stowpath {

/// A pair that is not proven clear over a stretch of a move.
struct Encounter {
  int move = 0;  ///< which of Model::moves
  int part = 0;  ///< which segment of the move, in order
  Span span;
  Role mover, target;
  Need need;
  Least least;                 ///< the least clearance over the span [m]
  PairAt worst;                ///< the pair there, seen from the base
  PairPlace place;             ///< the same in the model
  Configuration from, to, at;  ///< poses of the span's ends and of the worst; the station of a roll is the worst one
  IntervalSet stations;        ///< of the stair's middle [m]
  std::vector<double> things;  ///< what tells the met things of the room apart: stations of brackets, numbers of others
  std::vector<std::vector<Vec2>> outlines;  ///< of the two at the worst, seen from the room [m]
};

}  // namespace stowpath
