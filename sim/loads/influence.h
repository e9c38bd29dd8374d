#pragma once

#include <span>
#include <vector>

#include "sim/loads/beam.h"

namespace stowpath {

/// A beam prepared for loads that move: its equations are solved once, and every answer is then a sum over the loads.
///
/// What the beam's spread loads do is solve_beam's. What point loads add comes from the theorem of three moments: each
/// load enters at most two of its equations, so a column of the inverse tells at once what it does to every support.
/// Loads must stand on the beam; that is not checked here. Signs are those of beam.h.
/// Source: influence lines (Winkler and Mohr, 1868) and three moments (Clapeyron, 1857), from memory of any textbook.
class Influence {
 public:
  /// @throws std::invalid_argument as solve_beam does.
  explicit Influence(const Beam& beam);

  const Beam& beam() const { return beam_; }
  double moment(double at, std::span<const PointLoad> loads) const;              ///< [N m]
  double deflection(double at, std::span<const PointLoad> loads) const;          ///< [m]
  double reaction(std::size_t support, std::span<const PointLoad> loads) const;  ///< [N]

  /// Raises sagging, hogging and down to what the beam has under these loads; shear and up are not looked for.
  ///
  /// Spans without a load are passed over where simple bounds show that they raise nothing: a moment is at most the
  /// sum of what the spread loads and the straight line between its ends can have, and a span of length L whose
  /// greatest sagging moment is M bends down by at most M L^2 / 8 E I.
  void raise_peaks(std::span<const PointLoad> loads, BeamPeaks& peaks) const;

 private:
  std::size_t stretch_at(double at) const;
  Interval stretch(std::size_t i) const;
  double support_moment(std::size_t support, std::span<const PointLoad> loads) const;
  std::vector<double> support_moments(std::span<const PointLoad> loads) const;
  double shear_right_of(std::size_t support, std::span<const PointLoad> loads) const;
  double shear_left_of(std::size_t support, std::span<const PointLoad> loads) const;
  BeamPiece left_state(std::size_t stretch, std::span<const PointLoad> loads) const;
  BeamPiece point_state(double at, std::span<const PointLoad> loads) const;
  void raise_stretch(std::size_t stretch, std::span<const PointLoad> loads, BeamPiece state, BeamPeaks& peaks) const;
  void raise_unloaded_span(std::size_t span, double left, double right, BeamPeaks& peaks) const;

  Beam beam_;
  BeamSolution own_;                      // under the spread loads alone
  std::vector<std::size_t> first_piece_;  // by stretch, into own_.pieces; one more than there are stretches
  std::vector<BeamPeaks> own_peaks_;      // by stretch; only moments
  std::vector<double> inverse_;           // of the three-moment equations, column after column
};

}  // namespace stowpath
