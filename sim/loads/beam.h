#pragma once

#include <span>
#include <vector>

#include "sim/geometry/interval.h"

namespace stowpath {

/// Signs of this file: forces and deflections downward positive, reactions upward positive; a moment that sags
/// (tension below) is positive, one that hogs negative; shear is the moment's rate along the beam, so it is the sum of
/// what pushes up on the left.

struct PointLoad {
  double at = 0.0;     ///< [m]
  double force = 0.0;  ///< [N]
};

/// A load spread evenly.
struct SpreadLoad {
  Interval at;              ///< cut off at the beam's ends [m]
  double per_length = 0.0;  ///< [N/m]
};

/// A straight beam of one cross-section on rigid supports that hold both ways and let it turn; it may run past the
/// outer supports.
struct Beam {
  std::vector<double> supports;    ///< two or more, ascending [m]
  Interval ends;                   ///< [m]
  double stiffness = 0.0;          ///< E I [N m2]
  std::vector<SpreadLoad> spread;  ///< its own weight, for one
};

/// A stretch without a support, a point load or the edge of a spread load within: there the deflection is a polynomial
/// (a cubic, or of the fourth degree under a spread load). Values at its left end.
struct BeamPiece {
  double from = 0.0, length = 0.0;  ///< [m]
  double deflection = 0.0;          ///< [m]
  double slope = 0.0;               ///< of the deflection [rad]
  double moment = 0.0;              ///< [N m]
  double shear = 0.0;               ///< [N]
  double per_length = 0.0;          ///< spread load on it [N/m]
};

struct BeamSolution {
  double stiffness = 0.0;         ///< [N m2]
  std::vector<BeamPiece> pieces;  ///< from end to end, in order
  std::vector<double> reactions;  ///< by support; negative where it has to hold the beam down [N]
};

/// Solves by direct stiffness with the supports' rotations as unknowns: overhangs are statically determinate, and each
/// span ties only its own two ends, so the matrix has three diagonals.
/// @param loads  anywhere on the beam, in any order
/// @throws std::invalid_argument if there are fewer than two supports, they do not ascend within the ends, the
///         stiffness is not positive, a number is not finite or a load is off the beam.
/// Source: slope-deflection, any textbook of structures; fixed-end moments P a b^2 / L^2 from memory.
BeamSolution solve_beam(const Beam& beam, std::span<const PointLoad> loads);

/// At any place of the beam; a place beyond an end counts as that end. Shear at a jump is the one just to its right.
double moment_at(const BeamSolution& solution, double at);
double shear_at(const BeamSolution& solution, double at);
double slope_at(const BeamSolution& solution, double at);
double deflection_at(const BeamSolution& solution, double at);

/// A greatest value and where along the beam it stands.
struct BeamPeak {
  double value = 0.0;
  double at = 0.0;  ///< [m]
};

/// Greatest values, each at least 0.
struct BeamPeaks {
  BeamPeak sagging;  ///< [N m]
  BeamPeak hogging;  ///< as a positive number [N m]
  BeamPeak shear;    ///< of either sign [N]
  BeamPeak down;     ///< deflection [m]
  BeamPeak up;       ///< deflection, as a positive number [m]
};

/// Exact on every piece: moments peak at ends or where the shear passes zero, deflections where the slope does.
BeamPeaks beam_peaks(const BeamSolution& solution);

/// The piece from `s` behind its left end on: values there. `length` is not changed.
BeamPiece advanced(const BeamPiece& piece, double s, double stiffness);

/// Raises sagging, hogging and shear to what the piece has.
void raise_moments(const BeamPiece& piece, double stiffness, BeamPeaks& peaks);

/// Raises down and up to what the piece has.
void raise_deflections(const BeamPiece& piece, double stiffness, BeamPeaks& peaks);

}  // namespace stowpath
