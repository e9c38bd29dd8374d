#pragma once

#include <vector>

#include "sim/geometry/interval.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// What the side rails cover across: back face to front face, from the datum line [m].
inline Interval across_band(const Stair& stair) {
  return {stair.side_rails.front_face - stair.side_rails.width, stair.side_rails.front_face};
}

/// The right-hand stretch and its mirror image, left first. Stations from the stair's middle [m].
inline std::vector<Interval> both_sides(Interval right) { return {{-right.hi, -right.lo}, right}; }

/// The right-hand side rail's thickness along the rail [m].
inline Interval right_side_rail(const Stair& stair) {
  return {0.5 * stair.width - stair.side_rails.thickness, 0.5 * stair.width};
}

}  // namespace stowpath
