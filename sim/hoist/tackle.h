#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "sim/scene/scene.h"
#include "sim/trade/source.h"

namespace stowpath {

// Friction in a tackle by published models that disagree, kept apart. With four parts, four sheaves and 1000 at the
// block the hand pulls 250 without friction, 279 by the sling shop, 309 by the wire-rope handbook and 350 by the
// seaman's tenth. Lead sheaves count among the sheaves, never among the parts. Forces in the unit of the load.

/// A tenth of the load for each sheave: (W + n W / 10) / P. @throws std::invalid_argument if parts < 1.
/// @param sheaves  all that the line runs over, leads included
/// @param parts  of line at the moving block
double additive_pull(double load, int sheaves, int parts);
inline constexpr Source kAdditiveTackle{"S-TKL-10pct", "Nicholls's Seamanship; US Navy Builder 3 & 2: a tenth a sheave",
                                        SourceStatus::verified};

/// What a tackle may lift when its line may carry `line_load`: the tenth a sheave, turned round.
double navy_safe_load(double line_load, double advantage, int sheaves);
inline constexpr Source kNavySafeLoad{"S-TKL-navy10", "US Navy training manual 14043, lifting a given weight",
                                      SourceStatus::verified};

/// Pull over load when hauling: K^N (K - 1) / (K^N - 1), times K for every lead. The fall comes over the last of N
/// sheaves, each with a part of line before it; K = 1 gives 1 / N.
/// @throws std::invalid_argument if parts < 1, leads < 0 or K < 1.
double lead_line_factor(double K, int parts, int leads = 0);
/// Pull over load when the load sinks and the hand only holds back: (K - 1) / (K (K^N - 1)), over K for every lead.
double lowering_factor(double K, int parts, int leads = 0);
inline constexpr Source kGeometricTackle{"S-TKL-geo", "Wire Rope Users Manual, 4th edition, p. 88",
                                         SourceStatus::verified};
inline constexpr Source kLoweringTackle{"S-TKL-geo", "closed form from the Wire Rope Users Manual's factor",
                                        SourceStatus::derived};

/// Load over pull by the efficiency of a sheave, E = 1 / K: E (1 - E^n) / (1 - E).
double advantage_by_efficiency(double E, int parts);
inline constexpr Source kEfficiencyTackle{"S-TKL-E", "Pipeline Rules of Thumb Handbook: E 0.917 plain, 0.962 roller",
                                          SourceStatus::verified};

/// Load over pull as a sling shop's table prints it; empty outside 1 to 8 parts.
/// @param rolling  anti-friction bearings instead of bronze bushes
std::optional<double> sling_shop_ratio(bool rolling, int parts);
inline constexpr Source kSlingShopRatio{"S-TKL-ratio", "Rigger's Handbook, ratio of load to line pull",
                                        SourceStatus::verified};

inline constexpr Source kIdealTackle{"S-TKL-ideal", "no friction at all", SourceStatus::derived};

/// The pull by one model, to lay beside the others'.
struct TacklePull {
  std::string_view model;          ///< "geometric"
  double raising = 0.0;            ///< at the hand [N]
  double holding = 0.0;            ///< without friction's help [N]
  std::optional<double> lowering;  ///< where the model says anything of it [N]
  Source source;
};

/// Every model's pull for the same tackle, least first; the sling shop's up to 8 parts only.
std::vector<TacklePull> tackle_pulls(double load, int parts, int leads, SheaveKind sheaves);

}  // namespace stowpath
