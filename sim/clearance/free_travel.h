#pragma once

#include <array>
#include <string>

#include "sim/mechanism/model.h"

namespace stowpath {

/// How far the stair can be shifted, its pose kept, until something stops it.
struct FreeTravel {
  double at_most = 0.0;                ///< there is no more than this; the limit asked for where nothing stops it [m]
  bool stopped = false;                ///< false: nothing is met within the limit
  std::array<std::string, 2> parts{};  ///< what meets there: of the stair, of the room
};

/// What a shift of the whole stair is asked for.
struct Shift {
  Configuration pose;
  Vec2 along;          ///< unit direction in the side view
  double limit = 0.5;  ///< [m]
  Interval stations;   ///< of the stair's middle; over several, the station counts that leaves most travel [m]
  double play = 0.0;   ///< the stair may begin up to this far from its pose [m]
};

/// An upper bound of the free travel: it shows what certainly stops the stair, never that it can get so far.
///
/// A pair counts as met once it overlaps by what both outlines may stand out of the true things, and the play besides.
/// The hooks are free of the pipe, and no part is stopped by the floor, by ropes or by zones. Along a shift a pair's
/// signed distance is the greatest of linear functions, hence convex: where a secant meets the wanted overlap, it is
/// met no earlier, so that steps along secants come to the first such place from below.
/// Source: docs/method.md, "Does the hook stay on".
FreeTravel free_travel(const Model& model, const Move& move, const Shift& shift);

}  // namespace stowpath
