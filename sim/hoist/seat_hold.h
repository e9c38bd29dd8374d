#pragma once

#include <vector>

#include "sim/clearance/free_travel.h"
#include "sim/mechanism/hook_shape.h"

namespace stowpath {

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

/// The ways off at one pose. @param stations  of the stair's middle; over several, the one that leaves most travel
/// counts
SeatHold hold_at(const Scene& scene, const Model& model, std::size_t move, const Configuration& pose,
                 Interval stations);

/// A piece of a segment, from one share of its steps to another (see place_on), and whether the stair is held on it.
struct HeldPiece {
  double from = 0.0, to = 0.0;
  bool held = false;  ///< proven for every pose of the piece: something stops the stair before the hooks are off
};

/// Splits a stretch of a segment where the stair begins or ceases to be held, in order.
///
/// A piece is held if the stair is stopped at its middle though every part may lie as far off as the piece's motion
/// puts it anywhere on it, before the least way that any pose of it needs. What is not proven so is halved, down to a
/// hundredth of a degree of the section that turns most, and counts as not held.
std::vector<HeldPiece> held_pieces(const Scene& scene, const Model& model, std::size_t move, std::size_t segment,
                                   double from, double to);

}  // namespace stowpath
