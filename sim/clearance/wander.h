#pragma once

#include "sim/geometry/interval.h"
#include "sim/geometry/vec2.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// Where the centre of the hooks' circle may be besides its nominal place: on an arc about the pipe's centre, always
/// straight across from where the hook touches.
struct Wander {
  double slack = 0.0;        ///< the arc's radius: inside of the hook less the pipe's radius [m]
  Interval touch{0.0, 0.0};  ///< of the contact off the pipe's crown, positive towards the wall [rad]
  double rise = 0.0;         ///< see MoveSeat [m]
  double growth = 0.0;       ///< see MoveSeat [m]
  double hook_growth = 0.0;  ///< see MoveSeat [m]

  friend bool operator==(const Wander&, const Wander&) = default;
};

/// As far as the scene's seat range lets it.
Wander assumed_wander(const Model& model);

/// The same, and as statics have it wander in that move.
Wander wander_in(const Model& model, const Move& move);

/// Greatest distance from the nominal place [m].
double wander_reach(const Wander& wander);

/// How far it can go along the unit vector `n`, the nominal place included: never negative [m].
double wander_towards(const Wander& wander, Vec2 n);

}  // namespace stowpath
