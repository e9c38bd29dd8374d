#pragma once

#include <optional>
#include <vector>

#include "sim/clearance/free_travel.h"
#include "sim/hoist/seat_force.h"

namespace stowpath {

/// One pose and where the pipe bears on the hooks there.
struct SeatPose {
  std::size_t move = 0;     ///< index in Model::moves
  std::size_t segment = 0;  ///< of that move
  double v = 0.0;           ///< how far along it, see place_on
  Configuration pose;
  HookContact contact;

  /// The arc that the hook still covers past the contact, towards the curl's end [rad].
  double arc_left(Interval arc) const { return arc.hi - contact.touches.hi; }
  /// The contact as seen from the pipe's crown, positive towards the wall [rad].
  Interval off_crown() const;
};

/// What of the seat is wrong over a stretch of poses.
enum class SeatFault {
  near_end,  ///< the contact comes too near the curl's end
  off        ///< the pipe cannot give the force that balance asks for: the hook comes off unless something stops it
};

/// The two ways off the pipe at a pose, the pose kept: up, and along the shanks.
struct SeatHold {
  std::size_t move = 0;
  Configuration pose;
  double lift_needed = 0.0;   ///< for the curl to pass over the pipe's top [m]
  FreeTravel lift;            ///< straight up
  double slide_needed = 0.0;  ///< the same along the shanks, towards their head [m]
  FreeTravel slide;

  bool lift_stopped() const { return lift.stopped && lift.at_most < lift_needed; }
  bool slide_stopped() const { return slide.stopped && slide.at_most < slide_needed; }
};

/// A stretch of poses of one segment, in the procedure's order; its ends found to 1e-6 rad of the widest turn.
struct SeatLoss {
  SeatFault fault = SeatFault::off;
  SeatPose from, to, worst;
  std::optional<SeatHold> hold{};  ///< of one that is off: at the worst pose

  /// Something above stops the stair either way before the hook is off.
  bool stopped() const { return hold && hold->lift_stopped() && hold->slide_stopped(); }
};

/// What statics say of one move: where the contact wanders.
struct SeatWander {
  bool judged = false;       ///< false: not on the line, or the line slack all along
  bool unjudged_in = false;  ///< judged, with poses in it that are not
  bool lifted = false;       ///< see HookContact, in some pose
  bool held = true;          ///< the pipe can give every force that balance asks for
  Interval touches, force;   ///< of all its poses, see HookContact
  Interval off_crown;        ///< of all its poses, see SeatPose, with half a degree for what lies between them [rad]
};

struct SeatOptions {
  double step = 0.0698131700797732;  ///< between poses, of the section that turns most: 4 degrees [rad]
  double near_end =
      0.1745329251994330;       ///< contact this near to the curl's end is a fault: 10 degrees; judgement [rad]
  double hinge_radius = 0.005;  ///< of the hinges' pins, which the scene does not say; judgement [m]
};

struct SeatReport {
  HookShape hook;
  HookCone cone;
  double near_end = 0.0;             ///< as asked for [rad]
  std::vector<SeatPose> poses;       ///< all that were looked at, in order; those not judged too
  std::optional<std::size_t> worst;  ///< in `poses`: the least arc left
  std::vector<SeatWander> moves;     ///< beside Model::moves
  std::vector<SeatLoss> losses;      ///< in order
  std::optional<SeatHold> standing;  ///< the station that leaves most travel, at the working lean
  std::optional<SeatHold> parked;    ///< the procedure's last pose
  int unjudged = 0;                  ///< poses without a case of balance
  int binding = 0;                   ///< poses at which raising has none, see HookContact
  double seconds = 0.0;
};

/// Where the pipe bears on the hooks through every move, and what it would take to lift them off.
///
/// Standing, over the floor's friction and the leans that its unevenness allows; on the line, at poses no more than
/// `step` apart and closer where the force turns fast, raising, holding and lowering with the greatest friction.
/// Each range is that of the poses looked at: computed there, not proven between.
/// @note The stair weighs only itself: nobody stands on it.
SeatReport look_at_seat(const Scene& scene, const Model& model, const SeatOptions& options = {});

}  // namespace stowpath
