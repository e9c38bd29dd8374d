#pragma once

#include <array>

#include "sim/geometry/distance.h"
#include "sim/geometry/interval.h"

namespace stowpath::testing {

/// A sharp-edged prism along the rail, standing somewhere.
struct Prism {
  RoundedPolygon outline;  ///< in its own frame, radius 0 [m]
  Pose2 X_WB;              ///< in the side view
  Interval stations;       ///< [m]
};

using Point3 = std::array<double, 3>;  ///< out, up, station [m]

/// The distance the proofs use: sqrt(max(d, 0)² + gap²) [m].
double prism_distance(const Prism& a, const Prism& b);

/// How deep both the side views and the stations overlap; 0 or less where the prisms are apart [m].
double prism_overlap(const Prism& a, const Prism& b);

/// What two bounds say of a distance.
struct Enclosure {
  double at_least = 0.0;  ///< from a plane between the prisms [m]
  double at_most = 0.0;   ///< from a point of each [m]
};

/// The distance by projecting a point from one prism onto the other and back, until both bounds meet within
/// `tolerance` [m] or `most_steps` are spent. It uses neither the side view's distance nor the formula above.
/// Source: Cheney & Goldstein (1959), Proximity maps for convex sets, Proc. AMS 10(3) 448-450.
Enclosure alternating_projections(const Prism& a, const Prism& b, double tolerance, int most_steps);

}  // namespace stowpath::testing
