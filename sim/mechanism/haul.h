#pragma once

#include <vector>

#include "sim/mechanism/model.h"
#include "sim/mechanism/standing.h"

namespace stowpath {

/// The sections below one unpinned hinge, pinned straight among themselves: one rigid body, in the frame of its first.
struct LowerChain {
  DragRule rule;
  double plumb_lean = 0.0;    ///< at which its centre of mass is straight below the hinge [rad]
  double stretch_lean = 0.0;  ///< at which its axle is straight below the hinge, the foot at full stretch [rad]
};
LowerChain lower_chain(const Linkage& linkage, const Standing& standing, const std::vector<SectionMass>& masses,
                       int hinge);

/// Whether the casters stand on the floor there, to within 1 nm.
bool foot_stands(const Linkage& linkage, const LowerChain& chain, const Configuration& at);

/// Raises the lean to `lean` with the chain free to turn about its hinge.
///
/// While its foot stands, the foot drags, until the chain is plumb by its centre of mass or at full stretch. It leaves
/// the floor there, settles plumb if it is not so yet, and hangs plumb from then on. Each segment begins exactly where
/// the one before ends.
std::vector<Segment> haul(const Linkage& linkage, const LowerChain& chain, const Configuration& from, double lean);

}  // namespace stowpath
