#pragma once

#include "sim/geometry/interval.h"
#include "sim/mechanism/linkage.h"

namespace stowpath {

enum class SegmentKind {
  straight,  ///< lean, folds and station run linearly
  drag       ///< lean runs linearly; one fold follows so that the foot stays at its height
};

/// What a drag needs to know: the rigid chain below the unpinned hinge stands on its casters.
struct DragRule {
  int hinge = 0;              ///< the unpinned one, from 0
  Vec2 axle;                  ///< the casters' axle in the frame of the section below that hinge, chain below rigid [m]
  double axle_height = 0.0;   ///< at which the axle stays: floor level + caster radius [m]
};

/// One smooth piece of a move, u from 0 to 1. The stair may be anywhere in `free_stations` besides (a roll, or a hoist
/// that rolls): then station runs over all of it at every u.
struct Segment {
  SegmentKind kind = SegmentKind::straight;
  Configuration from, to;
  DragRule drag;                     ///< for SegmentKind::drag
  Interval stations{1.0, 0.0};       ///< every station of this stretch is meant at every u; empty: just the linear one

  Interval astray{0.0, 0.0};         ///< how far from the station it says the stair may stand, either way [m]

  bool over_stations() const { return !stations.empty(); }
};

/// The configuration at u in [0, 1]. For a drag the fold is solved from the foot's height.
Configuration at(const Linkage& linkage, const Segment& segment, double u);

/// Lean of the section below the dragged hinge, when the hinge stands at `hinge_up` [m]; NaN where the foot cannot reach.
double drag_lean(const Linkage& linkage, const DragRule& rule, double hinge_up);

/// Half-widths of all joints over a piece [u0, u1] about its middle: nothing on the piece turns or shifts by more from
/// where at(linkage, segment, (u0 + u1) / 2) puts it. Each is a bound, not an estimate: a drag's lower lean is monotone in
/// the hinge's height, so the height's range over the piece, widened by its rounding, bounds it even where its rate is
/// infinite (foot at full stretch). What does not move gets exactly 0.
struct Turns {
  std::array<double, kMaxSections> joint{};    ///< of the pivot's lean, then of fold 1, fold 2 [rad]
  std::array<double, kMaxSections> section{};  ///< of each section's own lean [rad]
  double station = 0.0;                        ///< [m]
};
Turns half_turns(const Linkage& linkage, const Segment& segment, double u0, double u1);

}  // namespace stowpath
