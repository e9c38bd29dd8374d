#pragma once

#include "sim/geometry/vec2.h"

namespace stowpath {

/// A place on a straight run of rope, measured in the side view from one of its ends.
struct RopeSpot {
  bool from_b = false;    ///< from end b, else from end a
  double distance = 0.0;  ///< towards the other end [m]
};

/// Where that is with the ends at a and b. Where they fall together it is there too.
Vec2 spot_at(Vec2 a, Vec2 b, RopeSpot spot);

/// How far a spot moves at most while its own end moves by at most `own` and the other by at most `other`, the two
/// being `apart` at first. The direction of a vector v that becomes w turns so that the unit vectors differ by at most
/// 2 |v - w| / (|v| + |w|). [m]
/// Source: Dunkl and Williams (1964), American Mathematical Monthly 71(1), 53-54.
double spot_displacement(RopeSpot spot, double own, double other, double apart);

}  // namespace stowpath
