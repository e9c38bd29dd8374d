#pragma once

#include <array>
#include <vector>

#include "sim/hoist/rigging.h"
#include "sim/mechanism/course.h"

namespace stowpath {

/// How fast each section's own lean grows, per unit of progress [rad] (or per second [rad/s]).
using LeanRates = std::array<double, kMaxSections>;

/// Exact rates at u. A drag's lower sections turn as fast as the hinge's rise makes them: infinitely fast where the
/// foot is at full stretch.
LeanRates lean_rates(const Linkage& linkage, const Segment& segment, double u);

/// Velocity of a point of a section while the sections turn at these rates [m per unit of progress].
Vec2 point_velocity(const Linkage& linkage, const SectionPoses& X_W, const LeanRates& rates, int section, Vec2 at);

/// How fast each segment of a rope grows, exactly [m per unit of progress]. The station must stay, or the whole rope
/// roll.
std::vector<double> segment_rates(const Rigging& rigging, const Linkage& linkage, const Configuration& pose,
                                  const LeanRates& rates);

/// A quarter turn counter-clockwise, as a velocity turns from an arm.
constexpr Vec2 quarter_turn(Vec2 v) { return {-v.y, v.x}; }

}  // namespace stowpath
