#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Mass and centre of every section: lumber by its species' density, hooks as steel, casters and extras as given.
/// Bolts, hinges and pins are left out: under one part in a hundred.
/// @param stair  all parts of the stair
std::vector<SectionMass> section_masses(const Scene& scene, const Linkage& linkage,
                                        const std::vector<StairPart>& stair);

/// Of the sections from `first` on, laid straight, in the frame of section `first` (its proximal joint's end at along
/// 0).
SectionMass chain_mass(const Linkage& linkage, const std::vector<SectionMass>& masses, int first);

}  // namespace stowpath
