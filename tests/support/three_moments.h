#pragma once

#include <vector>

#include "sim/loads/beam.h"

namespace stowpath::testing {

/// Bending moments over the supports of a continuous beam that ends at its outer supports, by Clapeyron's theorem of
/// three moments: a second method, which shares nothing with solve_beam. Sagging positive [N m].
/// @param beam  its spread loads cover all of it
/// @param loads  none on a support
/// Source: Clapeyron (1857), as in any textbook of structures, from memory.
std::vector<double> three_moments(const Beam& beam, const std::vector<PointLoad>& loads);

}  // namespace stowpath::testing
