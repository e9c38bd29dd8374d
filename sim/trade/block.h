#pragma once

#include <span>
#include <string_view>

#include "sim/trade/source.h"

namespace stowpath {

/// Tension on one side of a turning sheave over that on the other.
struct SheaveFactor {
  std::string_view bearing;  ///< "plain"
  double K = 1.0;
  Source source;
};

/// Two families that disagree, kept apart: the wire-rope handbook's and the one that a sling shop's table fits.
std::span<const SheaveFactor> sheave_factors();

/// The wire-rope handbook's. @param rolling  the sheave runs on rollers or balls
const SheaveFactor& handbook_sheave(bool rolling);

/// The sling shop's. @param rolling  anti-friction bearing instead of a bronze bush
const SheaveFactor& sling_shop_sheave(bool rolling);

/// Load on a block over the pull in its line: 2 cos(angle/2).
/// @param angle  between the two parts of the line, 0 where they run side by side [rad]; not the turn of the line
/// Source: S-BLK-angle, kulkoni.com and blockdivision.com, verified; the printed tables truncate.
double block_factor(double angle);
inline constexpr Source kBlockFactorSource{"S-BLK-angle", "kulkoni.com and blockdivision.com, block loading factors",
                                           SourceStatus::verified};

/// Tension in a leg of a sling over its share of the load: 1 / sin(angle).
/// @param angle  from the horizontal, in (0, pi/2] [rad]; some tables measure from the vertical
/// @throws std::invalid_argument if the angle is not in that range.
/// Source: S-SLG-fac, ashleysling.com, verified.
double sling_factor(double angle);
inline constexpr Source kSlingFactorSource{"S-SLG-fac", "ashleysling.com, Calculating sling angles",
                                           SourceStatus::verified};

}  // namespace stowpath
