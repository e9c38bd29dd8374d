#pragma once

#include "sim/hoist/pull.h"

namespace stowpath {

/// Where along the samples the line goes slack, the load changes sides, the foot leaves the floor and so on, each
/// refined between the two samples that it lies between.
std::vector<PullEvent> pull_events(const LiftRig& rig, const Model& model, const std::vector<PullSample>& samples);

/// Whether hauling in no longer raises the stair there.
bool cannot_lift(const PullSample& sample);

}  // namespace stowpath
