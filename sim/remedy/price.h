#pragma once

#include "sim/remedy/remedies.h"

namespace stowpath {

/// Fills in what a remedy gives and what it costs elsewhere, from the scene before and after.
void tell_price(const Scene& scene, const Assessment& before, const Scene& changed, const Assessment& after,
                const Finding& target, const AssessOptions& options, Remedy& remedy);

/// Whether hauling on the line still raises the stair wherever it did, with the line no more often slack: a change of
/// the rigging has to keep that.
bool still_lifts(const Scene& scene, const Model& before, const Scene& changed, const Model& after);

}  // namespace stowpath
