#pragma once

#include <optional>
#include <vector>

#include "sim/hoist/virtual_work.h"

namespace stowpath {

/// One value of each coefficient out of the scene's ranges.
struct FrictionChoice {
  double hook = 0.0;   ///< hook on pipe
  double hinge = 0.0;  ///< pin in hinge
  double floor = 0.0;  ///< caster scrubbing sideways
};

/// Which end of the scene's ranges of friction.
enum class FrictionEnd { least, mean, most };
FrictionChoice choose_friction(const Frictions& ranges, FrictionEnd end);

/// The stair on its lines: what the pull is reckoned from.
struct LiftRig {
  Linkage linkage;
  std::vector<SectionMass> masses;  ///< a spreader's mass counts at the pick
  Rigging line;
  std::optional<Rigging> fold_line;
  FrictionChoice friction;
  double hook_radius = 0.0;   ///< inside of the hook's bend, which slides on the pipe [m]
  double hinge_radius = 0.0;  ///< of the hinge's pin [m]
  double floor_level = 0.0;   ///< [m]
};

/// @param hinge_radius  of the hinges' pins: the scene does not say [m]
/// @throws std::invalid_argument without a hoist with a ceiling point.
LiftRig lift_rig(const Scene& scene, const Model& model, FrictionEnd end, double hinge_radius);

/// The forces at one pose of a move.
struct PosePull {
  Reactions reactions;
  double hand = 0.0;           ///< at the hoist line's hand [N]
  std::optional<double> fold;  ///< at the fold line's hand, where it is taut [N]
  std::vector<double> shares;  ///< of the hoist line's segments
  std::vector<double> fold_shares;
  int turned_hinge = -1;  ///< a hinge that turns and is turned by something other than a line, from 0
  bool on_floor = false;
};

/// Where on a move.
struct PosePlace {
  const Move& move;
  const Segment& segment;
  double u = 0.0;
};

/// In how many steps a segment is walked so that no section turns by more than `step` [rad] in one; a drag's rush apart.
int steps_along(const Linkage& linkage, const Segment& segment, double step);

/// Where a share v of those steps, in [0, 1], lies on a segment: a drag ends in a rush, as its foot comes to full
/// stretch, and is walked the more finely the nearer it is.
double place_on(const Segment& segment, double v);

/// Whether the segment is that of a lower section swinging plumb by itself, after its foot has left the floor.
bool settles(const PosePlace& place);

/// Rates at a pose, finite also at a drag's very end.
LeanRates rates_at(const LiftRig& rig, const PosePlace& place);

/// How fast the hoist line shortens there, at rest 0 [m per unit of u].
double hauling_rate(const LiftRig& rig, const PosePlace& place);

/// Pull that raises, holds or lowers the stair at a pose.
///
/// Raising means that the line is hauled in, whichever way the move itself goes; where the line stands still, joints
/// turn as in the move. Holding leaves out all friction. The foot stands on the floor on a drag; an unpinned chain
/// hangs plumb on a hang; a taut fold line holds the hinge that it spans, and where it would have to push, or there is
/// none, the hinge passes a moment (a pin, a rest, or someone turning the section).
PosePull pose_pull(const LiftRig& rig, const PosePlace& place, Haul haul);

/// Power that friction takes and what else the book of work needs, per unit of u with the move going forward.
struct PoseWork {
  double hand = 0.0;     ///< done at the hoist line's hand [J]
  double fold = 0.0;     ///< done at the fold line's hand [J]
  double turning = 0.0;  ///< done by whatever turns a hinge that no line turns [J]
  double gain = 0.0;     ///< of potential energy [J]
  double slack = 0.0;    ///< lost by a stair that drops on a slack line, in place of a hand that would push [J]
  double line_sheaves = 0.0, fold_sheaves = 0.0, hook = 0.0, hinges = 0.0, floor = 0.0;  ///< lost [J]
};

/// @param friction  false: all friction left out; it is left out too where the foot binds, see pose_pull
PoseWork pose_work(const LiftRig& rig, const PosePlace& place, bool friction);

}  // namespace stowpath
