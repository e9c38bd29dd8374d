#pragma once

#include "sim/trade/source.h"

namespace stowpath {

/// Tension on the tight side of a rope wound round a fixed post over that on the slack side, as it slips: e^(mu wrap).
/// @param wrap  angle in contact, more than a turn allowed [rad]
/// @throws std::invalid_argument if mu or wrap is negative.
double capstan_ratio(double mu, double wrap);
inline constexpr Source kCapstan{"S-CAP", "capstan equation, pickedshares.com exercise 27", SourceStatus::verified};

/// The least pull that holds `load` on the other side. In the unit of the load.
double capstan_hold(double load, double mu, double wrap);

}  // namespace stowpath
