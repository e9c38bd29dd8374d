#include "sim/hoist/tackle.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <stdexcept>

#include "sim/trade/block.h"

namespace stowpath {
namespace {

constexpr std::array<double, 8> kBronze{0.96, 1.87, 2.75, 3.59, 4.39, 5.16, 5.90, 6.60};
constexpr std::array<double, 8> kAntiFriction{0.98, 1.94, 2.88, 3.81, 4.71, 5.60, 6.47, 7.32};

void check_parts(int parts) {
  if (parts < 1) throw std::invalid_argument("a tackle has at least one part of line");
}

void check_geometric(double K, int parts, int leads) {
  check_parts(parts);
  if (leads < 0) throw std::invalid_argument("a line cannot have fewer than no lead sheaves");
  if (!(K >= 1.0)) throw std::invalid_argument("a sheave cannot give more than it takes: K is below 1");
}

// K + K^2 + ... + K^n, summed so that K = 1 needs no case of its own.
double powers(double K, int n) {
  double sum = 0.0, term = 1.0;
  for (int i = 0; i < n; ++i) {
    term *= K;
    sum += term;
  }
  return sum;
}

TacklePull sling_shop_pull(double load, double ratio, int parts, int leads, double K) {
  return {"sling shop", load / ratio * std::pow(K, leads), load / parts, std::nullopt, kSlingShopRatio};
}

}  // namespace

double additive_pull(double load, int sheaves, int parts) {
  check_parts(parts);
  return (load + 0.1 * sheaves * load) / parts;
}

double navy_safe_load(double line_load, double advantage, int sheaves) {
  return line_load * advantage * 10.0 / (10.0 + sheaves);
}

double lead_line_factor(double K, int parts, int leads) {
  check_geometric(K, parts, leads);
  return std::pow(K, leads) / powers(1.0 / K, parts);
}

double lowering_factor(double K, int parts, int leads) {
  check_geometric(K, parts, leads);
  return std::pow(K, -leads) / powers(K, parts);
}

double advantage_by_efficiency(double E, int parts) {
  check_parts(parts);
  return powers(E, parts);
}

std::optional<double> sling_shop_ratio(bool rolling, int parts) {
  if (parts < 1 || parts > 8) return std::nullopt;
  return (rolling ? kAntiFriction : kBronze)[static_cast<size_t>(parts) - 1];
}

std::vector<TacklePull> tackle_pulls(double load, int parts, int leads, SheaveKind sheaves) {
  const bool rolling = sheaves != SheaveKind::plain;
  const double K = handbook_sheave(rolling).K;
  check_geometric(K, parts, leads);
  const double ideal = load / parts;
  std::vector<TacklePull> pulls{
      {"ideal", ideal, ideal, ideal, kIdealTackle},
      {"geometric", load * lead_line_factor(K, parts, leads), ideal, load * lowering_factor(K, parts, leads),
       kGeometricTackle},
      {"additive", additive_pull(load, parts + leads, parts), ideal, std::nullopt, kAdditiveTackle}};
  if (const auto ratio = sling_shop_ratio(rolling, parts)) {
    pulls.push_back(sling_shop_pull(load, *ratio, parts, leads, sling_shop_sheave(rolling).K));
  }
  std::stable_sort(pulls.begin(), pulls.end(),
                   [](const TacklePull& a, const TacklePull& b) { return a.raising < b.raising; });
  return pulls;
}

}  // namespace stowpath
