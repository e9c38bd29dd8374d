#pragma once

#include "sim/hoist/pull_pose.h"

namespace stowpath {

/// Friction of the joints that turn, as it acts: the sign says which way.
struct JointFriction {
  double hook = 0.0;   ///< hook on pipe
  double hinge = 0.0;  ///< the pin of the hinge that is free to turn
};

/// The forces from outside on a stair at rest on its line.
struct SeatForces {
  Vec2 hook;           ///< pipe on stair: out, up [N]
  double line = 0.0;   ///< pull of all parts of line [N]
  double floor = 0.0;  ///< floor on foot, up [N]
  double scrub = 0.0;  ///< floor on foot, outward: by friction [N]
};

enum class Balance {
  possible,   ///< the forces have an end there
  none,       ///< no forces balance the stair: the line would have to push, or the floor to pull
  unbounded,  ///< they have none: the foot or a joint binds, and what holds the stair grows with what pulls it
};

/// One end of all the forces that can hold the stair. Where they are unbounded, the direction in which they grow.
struct SeatEnd {
  Balance balance = Balance::none;
  SeatForces forces;
};

/// The stair on its line at one pose, reduced to what the pipe's force depends on: the whole stair's balance about the
/// pivot, and that of what hangs below the one hinge that is free to turn.
///
/// The fold line, hinges that are held and the sheaves do not count: they act within the stair, and all parts of line
/// pull along one direction. With the joints' drag given, line, floor and scrub are three unknowns in two linear
/// equations: the forces lie on a straight line. The line pulls, the floor pushes, and the scrub keeps within the cone
/// of friction, which leaves one stretch of it. See docs/method.md, section 13.
class SeatBalance {
 public:
  /// @param rig  its coefficients of friction are not used
  SeatBalance(const LiftRig& rig, const PosePlace& place);

  bool has_free_hinge() const { return held_ != Held::rigid; }
  bool on_floor() const { return held_ == Held::drags; }

  /// The joints' drag is that of the forces at the end itself, by repeated solution until it settles. Forces over 100
  /// times the weight count as unbounded.
  /// @param floor  greatest coefficient of friction of the foot, either way
  /// @param last   which of the two ends; off the floor they are the same
  SeatEnd end(const JointFriction& joints, double floor, bool last) const;

 private:
  enum class Held { rigid, drags, hangs };
  /// Couples on the stair and on what is below the free hinge [N m].
  struct Drag {
    double hook = 0.0, hinge = 0.0;
  };
  /// Line, floor and scrub.
  struct Unknowns {
    double line = 0.0, floor = 0.0, scrub = 0.0;
  };

  void place_line(const LiftRig& rig, const SectionPoses& X_W, double station);
  void place_floor(const LiftRig& rig, const PosePlace& place, const SectionPoses& X_W);
  void add_weights(const LiftRig& rig, const SectionPoses& X_W);
  SeatEnd end_off_floor(const Drag& drag) const;
  SeatEnd end_on_floor(const Drag& drag, double floor, bool last) const;
  SeatForces all_forces(const Unknowns& at, double share_of_weight) const;
  Vec2 hinge_force(const SeatForces& forces) const;
  Drag drag_at(const JointFriction& joints, const SeatForces& forces) const;

  Held held_ = Held::rigid;
  int below_ = 0;                                  // the first section below the free hinge
  Vec2 pivot_, hinge_, foot_;                      // in the room; the foot where it touches the floor [m]
  Vec2 pull_;                                      // of the line for 1 N in all [N]
  double lever_ = 0.0;                             // of the line about the pivot [m]
  double lever_below_ = 0.0;                       // and about the hinge; 0 where it is tied above [m]
  bool pulled_below_ = false;                      // the line is tied below the free hinge
  double weight_ = 0.0, below_weight_ = 0.0;       // [N]
  double moment_ = 0.0, below_moment_ = 0.0;       // of the weights, about pivot and hinge, clockwise [N m]
  double hook_radius_ = 0.0, hinge_radius_ = 0.0;  // [m]
};

}  // namespace stowpath
