#pragma once

#include <vector>

#include "sim/rehearsal/side_world.h"

namespace stowpath::testing {

/// A chain of equal uniform rods hinged end to end, with nothing in its room; the first hangs on the pivot at the
/// room's origin.
Model hinged_rods(int count, double length, double mass);

/// A frictionless side world of such a model, its hinges without limit.
SideSetup bare_setup(const Model& model, double step);

/// Of a section, as the world has it [rad].
double lean_in(const SideWorld& world, int section);

/// A uniform rod let go.
struct RodFall {
  double time = 0.0;  ///< until it passes the mark; between two steps taken as a straight line [s]
  double rate = 0.0;  ///< there [rad/s]
};
struct RodLeans {
  double from = 0.0, mark = 0.0;  ///< [rad]
};
RodFall fall_of_rod(double length, RodLeans leans, double step);

}  // namespace stowpath::testing
