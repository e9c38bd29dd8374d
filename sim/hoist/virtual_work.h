#pragma once

#include "sim/hoist/motion.h"
#include "sim/hoist/statics.h"

namespace stowpath {

/// A rope whose pull is sought by the work it does.
struct WorkingRope {
  const Rigging& rigging;
  std::vector<double> shares;  ///< tension of each segment for 1 N at the hand
};

/// Gain in potential energy of the sections per unit of progress [J].
double energy_rate(const Linkage& linkage, const Configuration& pose, std::span<const SectionMass> masses,
                   const LeanRates& rates, double gravity = kGravity);

/// Work of 1 N at the hand on the stair per unit of progress, friction at the sheaves already taken off:
/// -sum(share_i dL_i/du) [m].
double rope_work_rate(const WorkingRope& rope, const Linkage& linkage, const Configuration& pose,
                      const LeanRates& rates);

/// Potential energy of the sections above the pivot's height [J].
double potential_energy(const Linkage& linkage, const Configuration& pose, std::span<const SectionMass> masses,
                        double gravity = kGravity);

/// The same forces as solve_statics, by virtual work: each section in turn is thought to turn alone, what hangs below
/// it going along, and the work of everything that acts comes to nothing; drag by repeated solution. `problem.lines` is
/// not looked at: `ropes` say how their lengths change.
Reactions virtual_work(const StaticsProblem& problem, std::span<const WorkingRope> ropes);

}  // namespace stowpath
