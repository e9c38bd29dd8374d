#include "sim/trade/block.h"

#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace stowpath {
namespace {

constexpr Source kHandbook{"S-TKL-geo", "Wire Rope Users Manual, 4th edition, p. 88", SourceStatus::verified};
constexpr Source kShop{"S-TKL-ratio", "Rigger's Handbook ratio table, fitted", SourceStatus::derived};

constexpr std::array kFactors{SheaveFactor{"plain", 1.09, kHandbook}, SheaveFactor{"roller or ball", 1.04, kHandbook},
                              SheaveFactor{"bronze bush", 1.045, kShop}, SheaveFactor{"anti-friction", 1.02, kShop}};

}  // namespace

std::span<const SheaveFactor> sheave_factors() { return kFactors; }

const SheaveFactor& handbook_sheave(bool rolling) { return kFactors[rolling ? 1 : 0]; }

const SheaveFactor& sling_shop_sheave(bool rolling) { return kFactors[rolling ? 3 : 2]; }

double block_factor(double angle) { return 2.0 * std::cos(0.5 * angle); }

double sling_factor(double angle) {
  constexpr double kUpright = 0.5 * std::numbers::pi + 1e-12;  // a right angle that came through degrees
  if (!(angle > 0.0 && angle <= kUpright)) throw std::invalid_argument("sling_factor: no angle of a sling");
  return 1.0 / std::sin(angle);
}

}  // namespace stowpath
