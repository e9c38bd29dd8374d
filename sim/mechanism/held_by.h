#pragma once

#include "sim/mechanism/fastening.h"

namespace stowpath {

/// What holds every part of stair, rail and rigging: all links of all chains down to the building.
///
/// Reaches and tolerances are fixed: neither the scene's margins nor its `tolerances` change an answer.
/// @param model  with stair, room, span and working lean already set
Fastenings held_by(const Scene& scene, const Model& model);

/// The way from a part to what holds it at last, links in order; where several ways lead on, one that is intact. It
/// ends at the building (or a person), or with the first broken link.
Fastenings chain_of(const Fastenings& links, const std::string& part);

/// "Fastened to nothing": one fault for each kind of part and each thing that is wrong with it.
std::vector<BuildFault> fastening_faults(const Fastenings& links);

}  // namespace stowpath
