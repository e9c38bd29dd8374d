#pragma once

#include <string>

#include "sim/loads/hardware.h"

namespace stowpath {

/// The greatest of what the hoist's moving states do to the stair itself, for those who look at one worst alone.
struct HoistedWorst {
  Vec2 hooks;                 ///< [N]
  double hinge = 0.0;         ///< [N]
  double joint_moment = 0.0;  ///< [N m]
  std::string hooks_where, hinge_where, joint_where;
};

inline HoistedWorst hoisted_worst(const HoistLoads& loads) {
  HoistedWorst worst;
  for (const HoistState& state : loads.states) {
    if (norm(state.hooks) > norm(worst.hooks)) worst.hooks = state.hooks, worst.hooks_where = state.where;
    for (const double force : state.hinges)
      if (force > worst.hinge) worst.hinge = force, worst.hinge_where = state.where;
    for (const double moment : state.moments)
      if (moment > worst.joint_moment) worst.joint_moment = moment, worst.joint_where = state.where;
  }
  return worst;
}

}  // namespace stowpath
