#pragma once

#include <vector>

#include "sim/hoist/rigging.h"
#include "sim/rehearsal/side_world.h"

namespace stowpath {

/// A rope as a spring that only pulls, along its way over the sheaves from the dead end to the hand.
struct ElasticLine {
  Rigging rigging;
  double stiffness = 0.0;     ///< EA: tension over strain [N]
  double fall = 0.0;          ///< rope beyond the last point, which stretches too [m]
  double damping = 0.15;      ///< share of the critical, for masses free of their pins; judgement
  double slip_speed = 0.005;  ///< at the sheaves, from which on their friction acts in full [m/s]
};

/// What is paid out of it.
struct LineFeed {
  double paid = 0.0;   ///< unstretched rope from dead end to hand [m]
  double speed = 0.0;  ///< at which the hand pays it out; negative: hauls it in [m/s]
};

/// What the rope does now.
struct LinePull {
  double hand = 0.0;               ///< tension at the hand; 0: slack [N]
  double length = 0.0;             ///< of its way, dead end to hand [m]
  double stretch = 0.0;            ///< way less rope; negative: slack [m]
  std::vector<SectionLoad> loads;  ///< on the stair [N]
  double stiffness = 0.0;          ///< of its whole way [N/m]
  double swiftness = 0.0;          ///< the rate at which it would bounce on the masses that it holds, at most [rad/s]
};

/// Tension at the hand is k x + c dx/dt, never less than 0, with x the stretch, taken as if the tension were the hand's
/// all along; at each sheave it changes by the rigging's friction, against the way the rope runs there. Near rest
/// friction grows in proportion to the speed: held still, a rope pulls as if there were none.
/// @note Explicit: good only while swiftness x step stays under 1/2 (see docs/method.md).
LinePull line_pull(const ElasticLine& line, const LineFeed& feed, const SideWorld& world, double station);

/// EA of a rope: seven times its breaking strength, or 160 N/mm2 times seven where that is not given. Published stretch
/// of polyester is 2 to 4 % at a fifth of the strength, of nylon three times that (sources.md S-ROPE-str20, from
/// memory); our judgement, as a scene does not say what its rope is made of.
/// @param diameter  [m]
/// @param strength  breaking [N]; not above 0: not known
double rope_stiffness(double diameter, double strength);

}  // namespace stowpath
