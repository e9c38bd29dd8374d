#pragma once

#include <vector>

#include "sim/hoist/pull_pose.h"
#include "sim/mechanism/model.h"

namespace stowpath {

enum class Act {
  hook_on,
  hook_off,
  pin,
  unpin,
  go,
  park,       ///< the procedure has come to its end: the line is made fast on its cleat, where there is one
  lower_away  ///< the line comes off its cleat, and the way down begins
};

/// One thing for the crew to do.
struct ScriptStep {
  Act act = Act::go;
  int move = -1;      ///< go: which of Model::moves
  int hinge = -1;     ///< pin, unpin: from 0
  bool back = false;  ///< on the way down: a move goes from its end to its beginning
};

/// The procedure's steps in order.
/// @param comes_down  and, once parked, all of it the other way round: moves backwards, pins put back, the line hooked
///                    off; a stair that is only rolled has no way down
std::vector<ScriptStep> script_of(const Scene& scene, const Model& model, bool comes_down);

/// Where the crew means the stair to be, how far through a move.
struct PathKnot {
  double time = 0.0;  ///< from the move's beginning, going at full speed [s]
  Configuration pose;
  double line = 0.0;  ///< way of the hoist line, dead end to hand; 0 without one [m]
  double fold = 0.0;  ///< and of the fold line [m]
  /// The foot stands on the floor there, or swings to or from it: on the way down it wants a hand.
  bool at_floor = false;
};

/// What the crew can do, and how fast.
struct CrewSpeeds {
  double line = 0.0;       ///< of the line at the hand or drum [m/s]
  double fold_line = 0.0;  ///< [m/s]
  double turning = 0.0;    ///< of a joint turned by hand [rad/s]
  double strength = 0.0;   ///< most pull at the hand or drum [N]
  double by_hand = 0.0;    ///< most pull on the fold line [N]
  double at_foot = 0.0;    ///< most with which someone draws the foot along the floor [N]
};

/// Hand over hand, the crank or the drive as the scene states them, or as is usual: in the drum's first layer. The hand
/// pulls as a strong person's body does, or up to the scene's own limit; on a crank the strong person's arm, at the
/// drum.
CrewSpeeds crew_speeds(const Scene& scene);

/// Whether a move rolls the stair while it stands on its casters: that is the span world's affair.
bool rolls_standing(const Move& move);

/// Whether it takes the raised stair along the rail.
bool goes_along_raised(const Move& move);

/// A move as the crew means to do it: each stretch as fast as the slower of its lines, or the hands on a joint, go. A
/// section that swings plumb by itself is waited for. Along the rail the raised stair goes at a walk.
/// @param rig  null where the scene has no hoist: then the crew turns everything by hand
std::vector<PathKnot> move_path(const LiftRig* rig, const Model& model, int move, const CrewSpeeds& speeds);

/// The same path from its end to its beginning, as fast.
std::vector<PathKnot> backwards(std::vector<PathKnot> path);

/// The meant pose at a time; the last one after the end.
PathKnot on_path(const std::vector<PathKnot>& path, double time);

/// Whether the rope runs between sections on both sides of the hinge (from 0).
bool rope_spans(const Rigging& rope, int hinge);

}  // namespace stowpath
