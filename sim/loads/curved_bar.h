#pragma once

namespace stowpath {

/// A bar's section for bending in its own plane, before it is bent to a circle.
struct BarSection {
  double depth = 0.0;    ///< in the plane of the bend [m]
  double area = 0.0;     ///< [m2]
  double breadth = 0.0;  ///< of a flat bar; 0 of a round one [m]
};

BarSection round_bar(double diameter);
BarSection flat_bar(double depth, double breadth);

/// Stresses of a curved bar under a force of 1 N through its centre of curvature, square to the section; tension at the
/// inner fibre positive [Pa].
struct CurvedBarStress {
  double inner = 0.0, outer = 0.0;
};

/// Winkler's theory: the neutral line lies at A / integral(dA / r), a little inside the middle.
/// @param inside  radius of the inner fibre [m]
/// @param lever  of the force about the section's centre [m]
/// Source: Shigley, Mechanical Engineering Design, "curved beams in flexure": the formulas from memory, its crane hook
/// as check.
CurvedBarStress curved_bar_stress(const BarSection& section, double inside, double lever);

}  // namespace stowpath
