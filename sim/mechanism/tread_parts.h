#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Heights of the treads' tops above the floor, lowest first, the deck being the last rise.
///
/// Equal rises: the fewest of at most 250 mm from the floor (or from the first tread, where that is given) to the deck.
/// The 250 mm is a rule of thumb inside the 165 to 305 mm that OSHA 29 CFR 1910.25(e) allows ship stairs.
std::vector<double> tread_heights(const Scene& scene);

/// The treads, level in the working pose between the side rails, each on the section that holds its middle. Treads that
/// would reach past the side rails' upper end are left out: there the loft is in reach.
/// @param faults  gets one entry for each tread that lies across a joint
void add_treads(const Scene& scene, const Linkage& linkage, double working_lean, std::vector<StairPart>& stair,
                std::vector<BuildFault>& faults);

}  // namespace stowpath
