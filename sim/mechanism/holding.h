#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Faults of handling: poses of the procedure in which a section is held by nothing.
///
/// Every move is walked in steps of a degree of the section that turns most, both ends exact, and so is the state after
/// every event that takes something away. In each pose
///
/// * the stair as a whole stands on its casters, has the hoist line on, or hangs plumb below the pipe;
/// * each unpinned joint is held by one of these: the foot on the floor while the line is on and no other joint is
///   unpinned; its own weight, hanging plumb; a stop (butted ends at fold 0, the hinge's limit, or the section above,
///   on which it comes to lie) towards which weight and lines press it; or the fold line, tight by the weight, where
///   that runs over the joint. One line has one tension: it holds every joint that it runs over with the same.
///
/// An angle within a degree counts as reached, and so does a balance that a turn of a degree from plumb would make. A
/// joint whose move takes it through plumb may swing there by itself from as far as 15 degrees: that is what `hang`
/// does as its foot leaves the floor.
/// @param model  with masses and moves set
std::vector<BuildFault> holding_faults(const Scene& scene, const Model& model);

}  // namespace stowpath
