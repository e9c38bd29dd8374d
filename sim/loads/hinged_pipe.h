#pragma once

#include <span>

#include "sim/loads/beam.h"

namespace stowpath {

/// Greatest bending moment [N m] of a beam that is hinged over every support while a group of loads moves along it:
/// each span by itself, and the overhangs, which hold as cantilevers. Exact.
///
/// While no load passes a support, a span's moment has no top between its loads: along the beam it may have one where
/// the shear is zero, but there it is a saddle, as it is linear in the position. So the greatest is under a load, where
/// it is a square of the position, or at a position where a load enters or leaves the span, or at the travel's ends.
/// @param beam  with its own weight as its one spread load, from end to end
/// @param group  loads by their distance from the group's zero, none upward
/// @param travel  of the group's zero, not empty
double hinged_moment(const Beam& beam, std::span<const PointLoad> group, Interval travel);

}  // namespace stowpath
