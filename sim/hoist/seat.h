#pragma once

#include <algorithm>
#include <optional>
#include <vector>

#include "sim/hoist/seat_force.h"
#include "sim/hoist/seat_hold.h"

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
  /// How far the contact that balance asks for, the hook's own friction left out, lies outside of the arc and of what
  /// the least friction holds before the shank; not above 0 where it does not [rad].
  double out_of_arc(Interval arc, const HookCone& cone) const {
    return std::max(-cone.sure - contact.points.lo, contact.points.hi - arc.hi);
  }
  /// The contact as seen from the pipe's crown, positive towards the wall [rad].
  Interval off_crown() const;
};

/// What of the seat is wrong, or not known, over a stretch of poses.
enum class SeatFault {
  near_end,  ///< the contact comes too near the curl's end
  off,       ///< the pipe cannot give the force that balance asks for: the hook comes off unless something stops it
  binds,     ///< not known: with some friction of the scene's ranges foot or joint binds
  slack,     ///< not known: with some friction of the scene's ranges the line does not hold the stair
  no_line    ///< not known: the scene does not say where the line comes from
};

/// Nothing is proven wrong there, and nothing right.
constexpr bool is_unknown(SeatFault fault) { return fault != SeatFault::near_end && fault != SeatFault::off; }

/// A stretch of poses of one segment, in the procedure's order; its ends found to 1e-6 rad of the widest turn, where
/// something begins or ceases to stop the stair to a hundredth of a degree.
struct SeatLoss {
  SeatFault fault = SeatFault::off;
  SeatPose from, to, worst;
  std::optional<SeatHold> hold{};  ///< of one that is off: at the worst pose
  double floor_known =
      0.0;            ///< of one on a drag that is off or binds: the floor's friction up to which no pose looked at is
  bool held = false;  ///< of one that is off: proven that something stops the stair either way, at every pose of it

  bool stopped() const { return held; }
};

/// What statics say of one move: where the contact wanders.
struct SeatWander {
  bool judged = false;       ///< false: not on the line, or the line slack all along
  bool unjudged_in = false;  ///< judged, with poses in it that are not
  bool unknown = false;      ///< with some friction of the scene's ranges it is not known what the hooks bear
  bool lifted = false;       ///< see HookContact, in some pose
  bool held = true;          ///< the pipe can give every force that balance asks for
  Interval touches, force;   ///< of all its poses, see HookContact
  Interval off_crown;        ///< of all its poses, see SeatPose, with half a degree for what lies between them [rad]
};

struct SeatOptions {
  double step = 0.0698131700797732;  ///< between poses, of the section that turns most: 4 degrees; a drag is walked
                                     ///< in steps an eighth as wide [rad]
  double near_end =
      0.1745329251994330;       ///< contact this near to the curl's end is a fault: 10 degrees; judgement [rad]
  double hinge_radius = 0.005;  ///< of the hinges' pins, which the scene does not say; judgement [m]
};

struct SeatReport {
  HookShape hook;
  HookCone cone;
  Frictions friction;                ///< the scene's ranges
  double near_end = 0.0;             ///< as asked for [rad]
  std::vector<SeatPose> poses;       ///< all that were looked at, in order; those not judged too
  std::optional<std::size_t> worst;  ///< in `poses`: the least arc left
  std::vector<SeatWander> moves;     ///< beside Model::moves
  std::vector<SeatLoss> losses;      ///< in order
  std::optional<SeatHold> standing;  ///< the station that leaves most travel, at the working lean
  std::optional<SeatHold> parked;    ///< the procedure's last pose
  int unjudged = 0;                  ///< poses without a case of balance
  int binding = 0;                   ///< poses at which some friction binds, see HookContact
  double seconds = 0.0;
};

/// Where the pipe bears on the hooks through every move, and what it would take to lift them off.
///
/// Standing, over the floor's friction and the leans that its unevenness allows; on the line, at poses no more than
/// `step` apart and closer where the force turns fast, over all friction of the scene's ranges. Each range is that of
/// the poses looked at: computed there, not proven between. That something stops a stair that comes off is proven
/// between the poses too.
/// @note The stair weighs only itself: nobody stands on it.
SeatReport look_at_seat(const Scene& scene, const Model& model, const SeatOptions& options = {});

}  // namespace stowpath
