#pragma once

#include <array>
#include <string>
#include <vector>

#include "sim/loads/load_case.h"
#include "sim/loads/standing_stair.h"

namespace stowpath {

/// A force on a section, split by its side rail: along towards the foot, across towards the climber [N].
struct AlongAcross {
  double along = 0.0, across = 0.0;
};

/// One joint of the standing stair. All forces are those of one side.
struct JointLoad {
  int hinge = 0;             ///< from 0
  double moment = 0.0;       ///< on one side, about the hinge's axis; positive where it sags [N m]
  double arm = 0.0;          ///< hinge's axis to lock pin; 0 without a lock [m]
  double pin = 0.0;          ///< on the lock pin, if the hinge takes the couple's other force [N]
  double pin_across = 0.0;   ///< its part across the side rail [N]
  double scab = 0.0;         ///< bending moment that the scab passes on [N m]
  double hinge_force = 0.0;  ///< on one hinge: the couple's other force and the joint's own shear [N]
  AlongAcross hinge_pinned;  ///< the same by its parts, each as large as it can be
  /// On one hinge without a lock, or where the pin is slack: the ends butt on one face, the hinge pulls on the other
  /// [N]
  double hinge_unlocked = 0.0;
  AlongAcross hinge_butted;  ///< the same by its parts
};

/// What one side rail carries, and its half of every joint.
struct SideLoad {
  double bending = 0.0;  ///< greatest moment [N m]
  double shear = 0.0;    ///< greatest, across [N]
  double sag = 0.0;      ///< greatest deflection, across [m]
  std::vector<JointLoad> joints;
};

/// The standing stair in one case, a person at one place, its four feet sharing in one of the ways that they can.
struct StandingState {
  std::string where;              ///< "one person on tread 9, 150 mm to the left, right caster in the air"
  std::size_t load_case = 0;      ///< of those given
  bool ultimate = false;          ///< held against what breaks
  double on_tread = 0.0;          ///< the person's weight, factors in it [N]
  std::vector<double> hooks;      ///< of the pipe on each hook, upward; negative: it would have to be held down [N]
  double thrust = 0.0;            ///< of the pipe on all hooks, outward [N]
  double along = 0.0;             ///< of the person on the stair, along the rail, either way [N]
  double floor = 0.0;             ///< of the floor on all casters, or on the foot where there are none, upward [N]
  std::vector<double> casters;    ///< of the floor on each, upward [N]
  double lifts = 0.0;             ///< of the person on all hooks, upward off the pipe; 0 where they are pressed on [N]
  double held_down = 0.0;         ///< of the stair's own weight on all hooks [N]
  double tips = 0.0;              ///< moment of the person over a side of the stair's stand, 0 inside it [N m]
  double tipping_held = 0.0;      ///< moment of the stair's own weight about that side [N m]
  std::array<SideLoad, 2> sides;  ///< left, right
};

/// Every case, at every standpoint, with the foot in the middle and as far as may be to either side, and with the load
/// shared as the side rails would, and in the two most uneven ways that keep every hook and caster pressed.
///
/// The floor pushes straight up: friction there only adds a thrust along the stair, which bends nothing. Two hooks and
/// two casters leave one share open; each way in between lies between two that are listed. Of more hooks or casters the
/// outermost carry.
std::vector<StandingState> standing_states(const StandingStair& stair, const std::vector<LoadCase>& cases);

/// The same for one case and one standpoint, whatever height the case is for; the foot in the middle, and shared as the
/// side rails would, first.
std::vector<StandingState> standing_states_at(const StandingStair& stair, const LoadCase& load,
                                              const Standpoint& point);

/// Of all [N].
double sum_of(const std::vector<double>& forces);

/// One joint of one side, from the moment about its axis and the force that it passes on.
JointLoad joint_load(const StandingStair& stair, int hinge, double moment, AlongAcross passed);

}  // namespace stowpath
