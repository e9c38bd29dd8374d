#pragma once

#include <vector>

namespace stowpath::testing {

using Matrix = std::vector<std::vector<double>>;

/// Gauss and Jordan with the greatest pivot of each column, for second opinions that share no solver with what they
/// check.
/// @param m  square, with the right side as its last column; not singular
std::vector<double> solve_dense(Matrix m);

}  // namespace stowpath::testing
