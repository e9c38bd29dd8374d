#pragma once

#include "sim/hoist/pull.h"
#include "sim/rehearsal/rehearsal.h"
#include "sim/scene/scene.h"

namespace stowpath::testing {

/// A stair in one piece with nothing in its way: lifted level, it needs room. It hangs on its hooks and its pick all
/// the way, its centre of mass (1.68 m along) between them.
Scene free_stair();

/// Its line on a powered drum that takes in so much of it [m/s].
Scene slow(Scene scene, double line_speed);

/// Worst share by which the rehearsed pull is off one of the statics' over a move, once it is under way and before it
/// stops; at least 20 frames are looked at.
double worst_share(const Scene& scene, const RehearsalReport& report, const MoveRun& run, double PullSample::*which);

/// Of section 1 [rad].
double lean_of(const RecordedFrame& frame);

}  // namespace stowpath::testing
