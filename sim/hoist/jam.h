#pragma once

#include "sim/trade/source.h"

namespace stowpath {

// A slider that touches its guide at two places jams, like a sticky drawer, when pushed far enough off the guide's
// line: no push moves it then. Offsets from the guide's axis; its thickness cancels.

/// Offset of the push from which the slider jams: L / (2 mu). In the unit of `contact_spacing`.
/// @param contact_spacing  distance of the two contacts along the guide
/// @throws std::invalid_argument if mu is not above 0 or the spacing is negative.
double jam_offset(double contact_spacing, double mu);

/// Friction from which a push at `offset` jams: L / (2 x). Infinite where the push is on the axis.
double jam_friction(double contact_spacing, double offset);

bool jams(double contact_spacing, double mu, double offset);
inline constexpr Source kJamRule{"S-JAM-rule", "moments about two contacts; concept in UCSD MAE 3, linear sliders",
                                 SourceStatus::derived};

}  // namespace stowpath
