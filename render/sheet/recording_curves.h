#pragma once

#include <cmath>
#include <vector>

#include "sim/mechanism/model.h"
#include "sim/rehearsal/recording.h"

namespace stowpath {

/// Where the sections stood in a frame, as the drawings take it.
SectionPoses recorded_poses(const RecordedFrame& frame, int sections);

/// Lean of a section from plumb, as it was; over a half turn where it went over [rad].
double recorded_lean(const RecordedFrame& frame, int section);

/// The end of the last section, which moves fastest: its foot [m].
Vec2 recorded_foot(const Model& model, const Recording& recording, const RecordedFrame& frame);

/// A curve against time [s], in pieces: it breaks off where the stair was brought to another station in between.
using BrokenCurve = std::vector<std::vector<Vec2>>;

/// What is plotted against time, one value a frame.
struct RecordingCurves {
  std::vector<Vec2> hoist, fold;         ///< time [s], pull [N]
  std::vector<Vec2> push;                ///< time [s], of a hand along the rail, either way [N]
  BrokenCurve station;                   ///< time [s], of the stair's middle [m]
  BrokenCurve speed;                     ///< time [s], of the foot, by differences between frames [m/s]
  std::vector<std::vector<Vec2>> leans;  ///< of each section: time [s], lean [rad]
};
RecordingCurves curves_of(const Model& model, const Recording& recording);

/// Frames to draw one over the other: the first, the last, and those between that are about as far apart as each other
/// by the way that the foot and the joints go; at most `most`.
/// @param until  what is later is left out [s]
std::vector<std::size_t> strip_frames(const Model& model, const Recording& recording, std::size_t most,
                                      double until = INFINITY);

/// Frames that a picture in motion needs: with straight lines from one to the next, no end of a section strays by more
/// than `tolerance` [m] from where it was, along the rail or in the side view, nor a line's pull by more than a hundredth
/// of its greatest.
std::vector<std::size_t> motion_frames(const Model& model, const Recording& recording, double tolerance);

}  // namespace stowpath
