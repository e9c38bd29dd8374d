#include "sim/hoist/small_solve.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stowpath {

namespace {

constexpr double kSingular = 1e-12;

std::vector<double> row_scales(const SmallSystem& system) {
  std::vector<double> scales(system.n, 0.0);
  for (std::size_t i = 0; i < system.n; ++i)
    for (std::size_t j = 0; j < system.n; ++j) scales[i] = std::max(scales[i], std::abs(system.at(i, j)));
  return scales;
}

std::size_t pivot_row(const SmallSystem& system, const std::vector<double>& scales, std::size_t column) {
  std::size_t best = column;
  for (std::size_t i = column + 1; i < system.n; ++i)
    if (std::abs(system.at(i, column)) * scales[best] > std::abs(system.at(best, column)) * scales[i]) best = i;
  return best;
}

void swap_rows(SmallSystem& system, std::vector<double>& scales, std::size_t i, std::size_t k) {
  if (i == k) return;
  for (std::size_t j = 0; j < system.n; ++j) std::swap(system.at(i, j), system.at(k, j));
  std::swap(system.b[i], system.b[k]);
  std::swap(scales[i], scales[k]);
}

void eliminate(SmallSystem& system, std::size_t column) {
  for (std::size_t i = column + 1; i < system.n; ++i) {
    const double factor = system.at(i, column) / system.at(column, column);
    if (factor == 0.0) continue;
    for (std::size_t j = column; j < system.n; ++j) system.at(i, j) -= factor * system.at(column, j);
    system.b[i] -= factor * system.b[column];
  }
}

}  // namespace

std::optional<std::vector<double>> solve_small(SmallSystem system) {
  std::vector<double> scales = row_scales(system);
  for (std::size_t column = 0; column < system.n; ++column) {
    swap_rows(system, scales, column, pivot_row(system, scales, column));
    if (!(std::abs(system.at(column, column)) > kSingular * scales[column])) return std::nullopt;
    eliminate(system, column);
  }
  std::vector<double> x(system.n);
  for (std::size_t i = system.n; i-- > 0;) {
    double sum = system.b[i];
    for (std::size_t j = i + 1; j < system.n; ++j) sum -= system.at(i, j) * x[j];
    x[i] = sum / system.at(i, i);
  }
  return x;
}

double residual_of(const SmallSystem& system, const std::vector<double>& x) {
  double worst = 0.0;
  for (std::size_t i = 0; i < system.n; ++i) {
    double sum = -system.b[i];
    for (std::size_t j = 0; j < system.n; ++j) sum += system.at(i, j) * x[j];
    worst = std::max(worst, std::abs(sum));
  }
  return worst;
}

}  // namespace stowpath
