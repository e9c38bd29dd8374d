#pragma once

#include <optional>
#include <vector>

#include "sim/mechanism/linkage.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// The stair's weight and lines as they turn its joints: what does not change through a procedure.
struct JointLoads {
  const Linkage& linkage;
  const std::vector<SectionMass>& masses;
  std::vector<RopeEnd> fold_line{};        ///< from its end over its pulleys, in order; empty without one
  std::optional<RopeEnd> ceiling_point{};  ///< none without a hoist line
  std::optional<RopeEnd> pick{};
};
JointLoads joint_loads(const Scene& scene, const Model& model);

/// What turns a free hinge in a pose, without friction. Moments are positive where they close the joint, that is, where
/// they make its fold greater.
struct JointBalance {
  double weight = 0.0;      ///< moment of all that hangs below the hinge, and of a hoist line that picks below it [N m]
  double lever = 0.0;       ///< the greatest that the weight's own could be: as if what is below stood level [N m]
  double load = 0.0;        ///< weight of all that hangs below the hinge [N]
  double fold_line = 0.0;   ///< moment of 1 N in the fold line [N m/N]
  bool comes_back = false;  ///< turned a little from rest it comes back: its centre of mass is below the hinge, or a
                            ///< line picks there
  double off_plumb = 0.0;   ///< angle of that centre from straight below the hinge, 0 or more [rad]
};

/// @param hinge      from 0
/// @param hooked_on  the hoist line carries the stair: its tension is the one that balances the whole stair's moment
///                   about the pivot; where that would have to push, it is slack
JointBalance balance_of(const JointLoads& loads, const Configuration& at, int hinge, bool hooked_on);

/// Angle of the whole stair's centre of mass from straight below the pivot [rad].
double pivot_off_plumb(const JointLoads& loads, const Configuration& at);

}  // namespace stowpath
