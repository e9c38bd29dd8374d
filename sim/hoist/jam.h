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

/// Drag over the force that presses, at each of the two contacts: friction where it slides, the arm of the rolling
/// resistance over the wheel's radius where it rolls (sim/trade/friction).
struct GuideDrags {
  double first = 0.0, second = 0.0;
};

/// The same rule with contacts that drag differently: L / (mu_1 + mu_2).
/// @throws std::invalid_argument if the two together are not above 0, one is negative, or the spacing is negative.
double jam_offset(double contact_spacing, GuideDrags drags);

bool jams(double contact_spacing, GuideDrags drags, double offset);

/// Friction of a contact that slides from which a push at `offset` jams, while the other one rolls: L / x less the
/// rolling one's drag. 0 where that alone jams it.
/// @param rolling  arm over radius
double jam_friction_beside_wheel(double contact_spacing, double rolling, double offset);

inline constexpr Source kJamRule{"S-JAM-rule", "moments about two contacts; concept in UCSD MAE 3, linear sliders",
                                 SourceStatus::derived};

}  // namespace stowpath
