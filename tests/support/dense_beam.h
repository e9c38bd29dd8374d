#pragma once

#include <vector>

#include "sim/loads/beam.h"

namespace stowpath::testing {

/// A continuous beam by direct stiffness in full: a node at every end, support, load and edge of a spread load, each
/// with a deflection and a turn, and one dense matrix. Slow, and shares nothing with solve_beam or Influence. Overhangs
/// and partly spread loads are welcome.
struct DenseBeam {
  std::vector<double> nodes;        ///< ascending [m]
  std::vector<double> deflections;  ///< by node, down [m]
  std::vector<double> moments;      ///< by node, just to its left, sagging positive [N m]
  std::vector<double> reactions;    ///< by support, up [N]
};

/// Source: the four-by-four stiffness of a beam element and its loads, from memory of any textbook.
DenseBeam dense_beam(const Beam& beam, const std::vector<PointLoad>& loads);

/// The same moments over supports by the theorem of three moments, for unequal spans, overhangs and part loads.
/// Source: Clapeyron (1857); the loads' terms by Simpson's rule over each simple span's moments, which are statics
/// alone and come from solve_beam. [N m]
std::vector<double> three_moments_overhung(const Beam& beam, const std::vector<PointLoad>& loads);

}  // namespace stowpath::testing
