#pragma once

#include <string>
#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// One thing that weighs: all stretches of a part of the stair, the casters, or an extra.
struct MassItem {
  std::string name;
  PartKind kind = PartKind::extra;
  int section = 0;  ///< from 0
  int count = 1;    ///< pieces
  SectionMass all;  ///< of all pieces together
};

/// Everything of the stair that is reckoned with: lumber by its species' density and moisture, hooks as steel, extras
/// as given, casters as given at their axle, which they turn about freely and so without inertia of their own.
/// Bolts, hinges, screws and lock pins are left out; sim/hoist/weights says what they come to.
/// @param stair  all parts of the stair
std::vector<MassItem> mass_items(const Scene& scene, const std::vector<StairPart>& stair);

/// Density of the stair's wood [kg/m3]; 450 where its species is not known.
double stair_wood_density(const Scene& scene);

/// Both together: masses add up, and inertias by the parallel-axis theorem.
SectionMass joined(const SectionMass& a, const SectionMass& b);

/// How much heavier than computed each section turned out on the scale: 1 where it was not weighed.
std::vector<double> weighing_factors(const Scene& scene, const std::vector<MassItem>& items, int sections);

/// Mass, centre and inertia of every section. A weighed one keeps its centre; all its masses are scaled alike.
std::vector<SectionMass> section_masses(const Scene& scene, const Linkage& linkage,
                                        const std::vector<StairPart>& stair);

/// Of the sections from `first` on, laid straight, in the frame of section `first` (its proximal joint's end at along
/// 0).
SectionMass chain_mass(const Linkage& linkage, const std::vector<SectionMass>& masses, int first);

}  // namespace stowpath
