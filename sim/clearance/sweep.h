#pragma once

#include <functional>
#include <span>

#include "sim/clearance/verdict.h"
#include "sim/geometry/pose2.h"
#include "sim/geometry/rounded_polygon.h"

namespace stowpath {

/// Any motion of one body in the side view: its pose for u in [0, 1], with proven limits on its rates.
struct Motion {
  std::function<Pose2(double)> pose;  ///< X_WB(u)
  double travel_limit = 0.0;          ///< |d p_WB / du| is never more [m]
  double turn_limit = 0.0;            ///< |d angle / du| is never more [rad]
};

/// What a sweep proved. The true least clearance lies in [at_least, at_most].
struct Clearance {
  Verdict verdict = Verdict::undecided;  ///< clear, interference or undecided
  double at_least = 0.0;                 ///< proven: no pose on the path comes closer [m]
  double at_most = 0.0;                  ///< witnessed at u_closest [m]
  double u_closest = 0.0;                ///< progress of the closest pose looked at
  int poses = 0;                         ///< poses looked at
};

/// Bounds how close `body` comes to any obstacle anywhere along `motion`, between the poses looked at as well as on
/// them.
///
/// No point of the body moves faster than L = travel_limit + reach * turn_limit per unit of u, so a pose with clearance
/// d rules out contact for |du| < d / L. The path is halved until every piece is settled to within `tolerance`. For
/// motions that no linkage makes; the dry fit's own moves go through prove().
/// @param tolerance  wanted at_most - at_least, greater than 0 [m]
/// @throws std::invalid_argument if tolerance <= 0, a limit is negative or not finite, or motion.pose is empty.
/// @note Proven for the motion's stated limits: a wrong limit makes a wrong proof.
/// Source: Shubert (1972), SIAM J. Numer. Anal. 9(3) 379-388; the bound is Mirtich's (PhD, UC Berkeley, 1996).
Clearance sweep_clearance(const RoundedPolygon& body, const Motion& motion, std::span<const RoundedPolygon> obstacles,
                          double tolerance, int max_poses = 100'000);

}  // namespace stowpath
