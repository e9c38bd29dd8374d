#include "sim/mechanism/rope_spot.h"

#include <algorithm>

namespace stowpath {

Vec2 spot_at(Vec2 a, Vec2 b, RopeSpot spot) {
  const Vec2 own = spot.from_b ? b : a, way = spot.from_b ? a - b : b - a;
  const double apart = norm(way);
  return spot.distance == 0.0 || apart == 0.0 ? own : own + spot.distance / apart * way;
}

double spot_displacement(RopeSpot spot, double own, double other, double apart) {
  if (spot.distance == 0.0) return own;
  const double change = own + other, lengths = 2.0 * apart - change;
  const double turn = lengths > 0.0 ? std::min(2.0, 2.0 * change / lengths) : 2.0;
  return own + spot.distance * turn;
}

}  // namespace stowpath
