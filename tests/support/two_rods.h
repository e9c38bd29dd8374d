#pragma once

#include <array>

#include "sim/mechanism/mass.h"

namespace stowpath::testing {

/// Two rigid sections in a plane: the first turns on a fixed pivot, the second on a hinge of the first, without
/// friction.
struct TwoRods {
  std::array<SectionMass, 2> sections;  ///< centres seen from the pivot, and from the hinge
  Vec2 hinge;                           ///< in the first section's frame [m]
};

/// Turns of both sections' x axes from out, counter-clockwise, and their rates.
struct TwoTurns {
  std::array<double, 2> turn{};  ///< [rad]
  std::array<double, 2> rate{};  ///< [rad/s]
};

/// Rates of change, from the equations of motion (Lagrange, in the two turns).
TwoTurns two_rods_rates(const TwoRods& rods, const TwoTurns& at);

/// Runs them for `time` by the classical Runge-Kutta method of fourth order.
TwoTurns run_two_rods(const TwoRods& rods, TwoTurns at, double time, int steps);

/// Of motion and weight, from the pivot's height [J].
double two_rods_energy(const TwoRods& rods, const TwoTurns& at);

}  // namespace stowpath::testing
