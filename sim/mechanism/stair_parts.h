#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// The side rails of every section. With a level foot the last one ends along the floor's direction in the working
/// pose, through the datum line's end.
/// @throws SceneError where a section is too short for that.
void add_side_rails(const Scene& scene, const Linkage& linkage, double working_lean, std::vector<StairPart>& stair);

/// Hinge barrels and leaves, and where there are locks: scabs on the side rails' outer faces, the blocks under their
/// upper halves, and the pins with their heads. All but the lower leaf go with the upper section; a pin is gone once
/// its hinge is unpinned.
void add_joints(const Scene& scene, const Linkage& linkage, std::vector<StairPart>& stair);

/// Casters, their plates and packing blocks, on the last section. A rigid wheel stands on edge in the side view, since
/// it rolls along the rail; of a swivel, all that its wheel can sweep is drawn.
void add_casters(const Scene& scene, const Linkage& linkage, double working_lean, std::vector<StairPart>& stair);

/// The same wheels as the floor meets them.
Wheels wheels_of(const Stair& stair);

/// Bars along each section and the posts that carry them.
void add_handrails(const Scene& scene, const Linkage& linkage, std::vector<StairPart>& stair);

/// @throws SceneError where an extra's outline is not convex or its section does not exist.
void add_extras(const Scene& scene, std::vector<StairPart>& stair);

}  // namespace stowpath
