#pragma once

#include <span>

#include "sim/loads/rail.h"

namespace stowpath {

/// What a joint of the pipe must pass on while a group of loads moves along it.
/// @param group  loads by their distance from the group's zero
/// @param travel  of the group's zero
JointPeak joint_peak(const Influence& influence, std::span<const PointLoad> group, Interval travel, const Pipe& pipe,
                     const PipeJoint& joint);

}  // namespace stowpath
