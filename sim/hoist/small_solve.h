#pragma once

#include <optional>
#include <vector>

namespace stowpath {

/// A small dense system A x = b, row by row.
struct SmallSystem {
  explicit SmallSystem(std::size_t size) : n(size), a(size * size, 0.0), b(size, 0.0) {}
  double& at(std::size_t row, std::size_t column) { return a[row * n + column]; }
  double at(std::size_t row, std::size_t column) const { return a[row * n + column]; }

  std::size_t n;
  std::vector<double> a;  ///< n rows of n
  std::vector<double> b;
};

/// Gaussian elimination with scaled row pivoting. Empty where a pivot falls under 1e-12 of its row: the unknowns do not
/// follow from the equations.
/// Source: Golub & Van Loan, Matrix Computations, section 3.4 (from memory).
std::optional<std::vector<double>> solve_small(SmallSystem system);

/// Greatest |A x - b|.
double residual_of(const SmallSystem& system, const std::vector<double>& x);

}  // namespace stowpath
