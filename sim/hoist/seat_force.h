#pragma once

#include "sim/hoist/seat_balance.h"
#include "sim/mechanism/hook_shape.h"

namespace stowpath {

/// The angle on the hook's bend towards which the pipe's force on the stair points: 0 at the shank, 90 degrees at the
/// crown, growing to the curl. An angle in the mouth is told from the side it is nearer to: past the arc's end, or
/// under 0 on the shank [rad].
double bend_angle(Vec2 force, double lean, Interval arc);

/// What the standing stair's own balance depends on: three forces, of weight, floor and pipe.
struct StandingBalance {
  double weight = 0.0;  ///< [N]
  double centre = 0.0;  ///< the centre of mass, out from the pivot [m]
  double foot = 0.0;    ///< where the casters touch the floor, out from the pivot [m]
  double height = 0.0;  ///< of the pivot over the floor [m]
};
StandingBalance standing_balance(const Scene& scene, const Model& model, double lean);

/// The pipe's force on the standing stair, while the floor's friction takes the share k of its normal force, positive
/// outward [N]. Moments about the pivot give the floor's normal force weight centre / (foot + k height).
Vec2 standing_hook_force(const StandingBalance& balance, double k);

/// Where the pipe touches and how it presses, over a range of friction.
struct HookContact {
  bool judged = false;  ///< false: no case of balance was found, as on a slack line
  bool binds = false;   ///< with some friction of the range no force is the greatest: foot or joint binds
  bool slack = false;   ///< with some friction of the range nothing holds the stair: it moves by itself
  double floor_known =
      0.0;  ///< the floor's friction up to which the foot does not bind; the range's end if it never does
  double joints_known = 1.0;  ///< the same of hook and hinge, as a share of the greatest friction
  bool lifted = false;        ///< in some case the pipe would press the hooks down: only their curl holds them on
  bool held = true;  ///< the pipe can give the force in every case: it points into the arc, or is held by friction
  Interval points;   ///< on the bend, without the hook's own friction [rad]
  Interval touches;  ///< with it, within the arc [rad]
  Interval force;    ///< size [N]
};

/// Friction of the hook on the pipe, as a cone's half-angles: what surely holds, and how far the contact may wander.
struct HookCone {
  double sure = 0.0;  ///< atan of the least coefficient [rad]
  double most = 0.0;  ///< atan of the greatest [rad]
};
HookCone hook_cone(const Frictions& friction);

/// Standing, over every friction of the floor up to the greatest, either way.
///
/// The force's direction is a quotient of linear functions of k, and so monotone: its ends are those at the ends of k.
/// A foot pushed in far enough would have the shanks lean on the pipe: the range stops at the shank then.
HookContact standing_contact(const StandingBalance& balance, double lean, double floor_friction, const HookCone& cone,
                             Interval arc);

/// On the line, at a pose at rest: over every friction of hook, hinge and floor up to the rig's, each acting either
/// way; raising, holding and lowering are among that.
///
/// Where the forces are unbounded, the contact goes on to the direction in which they grow. Let down, a foot that
/// sticks takes only what it needs: the forces end where the line is just slack.
/// @param least_floor  friction of the floor that there is at the least: with it the stair must have a balance
HookContact hauled_contact(const LiftRig& rig, const PosePlace& place, const HookCone& cone, Interval arc,
                           double least_floor = 0.0);

}  // namespace stowpath
