#pragma once

#include <vector>

#include "sim/hoist/rigging.h"

namespace stowpath {

/// A point or a free vector of the room: out, up, and along the rail [m].
struct Vec3 {
  Vec2 side;  ///< out, up
  double along_rail = 0.0;
};

/// One straight run of rope in the room.
struct RopeSegment {
  double length = 0.0;  ///< [m]
  Vec3 pull;            ///< unit vector from its first point to its second: how it pulls on the first
};

/// All segments of a rope at a pose. A segment between equal points has no length and pulls nowhere.
std::vector<RopeSegment> rope_segments(const Rigging& rigging, const Linkage& linkage, const Configuration& pose);

/// The same for sections placed anyhow, with the stair's middle at a station [m].
std::vector<RopeSegment> rope_segments(const Rigging& rigging, const SectionPoses& X_W, double station);

/// From dead end to hand, knot and tail left out [m].
double rope_length(const Rigging& rigging, const Linkage& linkage, const Configuration& pose);

/// Force of the rope on each of its points for 1 N at the hand, given each segment's share. The force on a hand that is
/// not a sheave is the pull on what holds it.
std::vector<Vec3> point_forces(const Rigging& rigging, const std::vector<RopeSegment>& segments,
                               const std::vector<double>& shares);

}  // namespace stowpath
