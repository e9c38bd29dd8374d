#include "tests/support/solve_dense.h"

#include <cmath>
#include <utility>

namespace stowpath::testing {

std::vector<double> solve_dense(Matrix m) {
  const std::size_t n = m.size();
  for (std::size_t column = 0; column < n; ++column) {
    std::size_t pivot = column;
    for (std::size_t row = column; row < n; ++row)
      if (std::abs(m[row][column]) > std::abs(m[pivot][column])) pivot = row;
    std::swap(m[pivot], m[column]);
    for (std::size_t row = 0; row < n; ++row) {
      if (row == column) continue;
      const double share = m[row][column] / m[column][column];
      for (std::size_t k = column; k <= n; ++k) m[row][k] -= share * m[column][k];
    }
  }
  std::vector<double> answer(n);
  for (std::size_t i = 0; i < n; ++i) answer[i] = m[i][n] / m[i][i];
  return answer;
}

}  // namespace stowpath::testing
