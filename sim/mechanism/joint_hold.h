#pragma once

#include <array>
#include <vector>

#include "sim/mechanism/joint_balance.h"

namespace stowpath {

/// What holds a joint in a pose.
enum class JointHold {
  held,        ///< a pin, a stop, its weight hanging plumb, the foot on the floor, or a tight line
  buckles,     ///< standing unpinned without a line
  opens,       ///< its weight opens it and no fold line runs over it
  sinks,       ///< its weight swings it down towards plumb, which closes it, and no line pulls the other way
  closes,      ///< its weight lets it fall on towards the section above, and no line pulls the other way
  wrong_pull,  ///< a fold line runs over it, and its pull passes the hinge on the wrong side or too near
  other_joint  ///< the fold line is as tight as another joint wants it, and this one wants something else
};

struct JointState {
  JointHold hold = JointHold::held;
  bool near_plumb = false;  ///< what is loose hangs within 15 degrees of plumb
};

/// One pose with what is on and what is pinned.
struct HeldPose {
  Configuration at;
  bool hooked_on = false;
  std::vector<bool> pinned;                      ///< by hinge
  std::array<bool, kMaxSections - 1> turning{};  ///< the joint turns in the move: the fold line works on it first
};

/// What joints can rest on besides their loads.
struct JointStops {
  const Scene& scene;
  const Model& model;
};

/// What holds each joint there, by hinge.
std::vector<JointState> joint_holds(const JointLoads& loads, const JointStops& stops, const HeldPose& pose);

/// Whether the stair stands on its casters, straight.
bool stands(const Model& model, const Configuration& at);

}  // namespace stowpath
