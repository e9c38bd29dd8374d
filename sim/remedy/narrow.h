#pragma once

#include <vector>

#include "sim/clearance/dry_fit.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// The model with only those parts, ropes, things of the room and moves that the findings are about: what a dry fit of
/// it finds, a dry fit of the whole model finds too, and it takes a fraction of the time. The whole may have more.
Model narrowed(const Model& model, const std::vector<Finding>& about);

}  // namespace stowpath
