#pragma once

#include <vector>

#include "sim/rehearsal/side_world.h"

namespace stowpath::testing {

/// A chain of equal uniform rods hinged end to end, with nothing in its room; the first hangs on the pivot at the
/// room's origin.
Model hinged_rods(int count, double length, double mass);

/// A frictionless side world of such a model, its hinges without limit.
SideSetup bare_setup(const Model& model, double step);

}  // namespace stowpath::testing
