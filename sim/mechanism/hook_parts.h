#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// The hooks: a straight shank along the section, the bend over the pipe from the climber's side, and a straight tip.
///
/// The bend's angle runs from 0 at its shank side (towards the climber) over 90 degrees at the crown (away from the
/// foot) to 180 degrees on the wall side. What lies past 135 degrees is the "hook curl", the rest the "hook crown": the
/// curl is what strikes brackets and what is trimmed. Round bar is given its full diameter as a square: outside the
/// true bar.
/// @param arc_tolerance  how far the bend's pieces may stand out of the true bend [m]
void add_hooks(const Scene& scene, double arc_tolerance, std::vector<StairPart>& stair);

}  // namespace stowpath
