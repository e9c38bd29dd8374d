#pragma once

#include <span>

#include "sim/geometry/interval.h"

namespace stowpath {

/// The stations of the stair's middle at which a pair with side-view distance d comes closer than `margin`, exactly:
/// those with gap(I + s, J) < sqrt(margin² - d²), or < margin where the side views overlap. (The ends themselves keep
/// the margin; they are given as the closed stretch.)
/// @param moving  stretches of the stair's part, from its middle [m]
/// @param fixed   stretches of the room's part [m]
/// @param margin  may be negative: that much overlap along the rail is allowed [m]
IntervalSet blocked_stations(double d, double margin, std::span<const Interval> moving,
                             std::span<const Interval> fixed);

}  // namespace stowpath
