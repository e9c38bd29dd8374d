#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// The hooks: a straight shank along the section, the bend over the pipe from the climber's side, and the curl's end.
///
/// The bend's angle runs from 0 at its shank side (towards the climber) over 90 degrees at the crown (away from the
/// foot) to 180 degrees on the wall side. What lies past 135 degrees is the "hook curl", the rest the "hook crown": the
/// curl is what strikes brackets and what is trimmed. Round bar is given its full diameter as a square: outside the
/// true bar. A plate's rim is a bend of its own depth, and its parts come as they are drawn; a roller is a block as
/// long along the rail as its diameter.
/// @param arc_tolerance  how far the bend's pieces may stand out of the true bend [m]
/// @throws SceneError where a plate's part is not convex.
void add_hooks(const Scene& scene, double arc_tolerance, std::vector<StairPart>& stair);

/// The jog that takes a rod from the bend to a shank which stands off its tangent: two bends of equal turn, opposite
/// ways, whose inside radius is the rod's diameter, and a straight between them once they have turned by 45 degrees.
struct ShankJog {
  double turn = 0.0;      ///< of each bend [rad]
  double straight = 0.0;  ///< between them [m]
  double along = 0.0;     ///< where the shank begins, from the bend's end [m]
};
ShankJog shank_jog(double offset, double rod);

}  // namespace stowpath
