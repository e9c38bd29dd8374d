#include "tests/support/three_moments.h"

#include <cmath>

#include "tests/support/solve_dense.h"

namespace stowpath::testing {

namespace {

// 6 A a / L of a span's simple-beam moment diagram: a from the left end, or from the right end.
double diagram(const Beam& beam, const std::vector<PointLoad>& loads, std::size_t span, bool from_left) {
  const double start = beam.supports[span], length = beam.supports[span + 1] - start;
  double sum = 0.0;
  for (const SpreadLoad& spread : beam.spread) sum += spread.per_length * std::pow(length, 3) / 4;
  for (const PointLoad& load : loads) {
    const double a = load.at - start, b = length - a, arm = from_left ? a : b;
    if (a > 0.0 && b > 0.0) sum += load.force * arm * (length * length - arm * arm) / length;
  }
  return sum;
}

}  // namespace

std::vector<double> three_moments(const Beam& beam, const std::vector<PointLoad>& loads) {
  const std::size_t n = beam.supports.size();
  Matrix m(n, std::vector<double>(n + 1));
  m.front().front() = m.back()[n - 1] = 1.0;
  for (std::size_t i = 1; i + 1 < n; ++i) {
    const double before = beam.supports[i] - beam.supports[i - 1], after = beam.supports[i + 1] - beam.supports[i];
    m[i][i - 1] = before;
    m[i][i] = 2.0 * (before + after);
    m[i][i + 1] = after;
    m[i][n] = -diagram(beam, loads, i - 1, true) - diagram(beam, loads, i, false);
  }
  return solve_dense(m);
}

}  // namespace stowpath::testing
