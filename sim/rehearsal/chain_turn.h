#pragma once

#include <span>
#include <vector>

#include "sim/geometry/vec2.h"

namespace stowpath {

/// A body of the chain at the beginning of a step, with the velocities that the step gave it.
struct ChainBody {
  double mass = 0.0;     ///< [kg]
  double inertia = 0.0;  ///< about its centre [kg m2]
  Vec2 velocity;         ///< of its centre [m/s]
  double rate = 0.0;     ///< [rad/s]
};

/// A pin between two bodies, or between the room and one.
struct ChainPin {
  int upper = -1;  ///< -1: the room
  int lower = 0;
  Vec2 upper_arm;  ///< from the upper body's centre to the pin, in the room [m]
  Vec2 lower_arm;  ///< [m]
};

/// Turns the velocities half a step along, and returns the force that each pin adds on its lower body for it [N].
///
/// A physics step asks of each pin that its two sides move alike where they stand at the step's beginning. By the
/// step's end the arms have turned: the pin's sides would part by h²/2 (w² r), and are put together again without a
/// word to the velocities, which loses energy in proportion to the step. Asked instead for velocities that keep the pin
/// closed at the step's end, v_lower - v_upper = h/2 (w_l² r_l - w_u² r_u), the scheme is of second order and keeps the
/// energy; as what it adds comes in equal and opposite pairs, momentum is kept too. What the step left of the pins' own
/// velocity is taken out with it. Source: the scheme is SHAKE, Ryckaert, Ciccotti & Berendsen, J. Comput. Phys. 23
/// (1977) 327-341, for pins that turn (from memory).
/// @param step  h [s]
std::vector<Vec2> turn_with_arms(std::span<ChainBody> bodies, std::span<const ChainPin> pins, double step);

}  // namespace stowpath
