#pragma once

#include "sim/mechanism/fastening.h"

namespace stowpath {

/// What is built into the stair, down to its sections: each section is held by its side rails, and these by the hinge
/// above them.
///
/// Scabs, spacer blocks, handrails, plates and extras have to touch wood of their section, to within kOnFace, or
/// another of these that does. Half of a tread's side view has to lie between both side rails, and half of a caster's
/// plate on its side rail. A wheel reaches half of its width along the rail and half of its diameter in the side view
/// to what carries it (a judgement). A hinge's leaves lie on wood over their whole length, and a lock's pin goes
/// through the side rail of the section below with its whole diameter.
Fastenings stair_fastenings(const HoldingView& view);

}  // namespace stowpath
