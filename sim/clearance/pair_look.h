#pragma once

#include <string>
#include <vector>

#include "sim/clearance/pair_place.h"
#include "sim/clearance/stage.h"

namespace stowpath {

/// The mover of a pair, as the proofs see it.
Mover mover_of(const Model& model, const PairPlace& place);

/// The target of a pair, in its base's frame.
Target target_of(const Model& model, const PairEnd& end);

/// What reports call the thing of the room, or the part, that the end is.
const std::string& name_of(const Model& model, const PairEnd& end);

/// The pairs of the same stage whose clearance at the place's pose is within `tie` of `clearance`; of a zone, those of
/// zones, else those that count for the least clearance. The place's own pair is among them if it is that close.
std::vector<PairPlace> tied_pairs(const Model& model, const PairPlace& place, double clearance, double tie);

}  // namespace stowpath
