#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

#include "sim/hoist/rope_geometry.h"
#include "sim/mechanism/model.h"
#include "sim/trade/us_units.h"

namespace stowpath {

/// What keeps a hinge at its fold.
enum class HingeHold {
  free,  ///< nothing: what hangs below it is guided by the floor or by a rope
  held,  ///< a pin, a rest or a hand: it passes a moment between its two sections
  hangs  ///< the chain below hangs plumb. Drag in the hinge tilts it by an unnoticeable angle, at which its weight
         ///< balances the drag: a couple on the section below alone, 0 without drag
};

/// A force on a section.
struct SectionLoad {
  int section = 0;
  Vec2 at;     ///< in its frame [m]
  Vec2 force;  ///< out, up [N]
};

/// The forces of one rope on the sections for 1 N at its hand.
struct LineLoad {
  std::vector<SectionLoad> per_unit;
};

/// What a rope does to the sections, side view, given each segment's share of the hand's tension.
LineLoad line_load(const Rigging& rigging, const std::vector<RopeSegment>& segments, const std::vector<double>& shares);

/// The foot on the floor: a force from the floor whose size is not known.
struct FloorContact {
  Vec2 axle;              ///< in the last section's frame [m]
  double below = 0.0;     ///< the floor lies this far under the axle [m]
  double friction = 0.0;  ///< share of the normal force along +out, signed against the foot's sliding
};

/// A chain of sections in a pose, at rest or moving so slowly that nothing is left over for acceleration.
///
/// Unknown are the hook's force, each hinge's, a moment at each hinge that is not free, the tension of each line and
/// the floor's force: as many as the three equations of each section only if (hinges not free) + lines + floor =
/// sections.
struct StaticsProblem {
  const Linkage& linkage;
  Configuration pose;
  std::span<const SectionMass> masses;
  std::vector<HingeHold> hinges;
  std::vector<SectionLoad> given;
  std::vector<LineLoad> lines;
  std::optional<FloorContact> floor;
  /// Radius of the friction circle of the pivot and of each hinge, signed like the joint's turning [m]: drag is that
  /// radius times the joint's force, against the turning.
  std::array<double, kMaxSections> joint_drag{};
  double gravity = kGravity;  ///< [m/s2]
};

struct Reactions {
  std::vector<double> tension;              ///< at the hand of each line; negative: the line would have to push [N]
  Vec2 hook;                                ///< pipe on stair: out, up [N]
  std::array<Vec2, 2> hinge{};              ///< upper section on lower [N]
  std::array<double, 2> hinge_moment{};     ///< on the lower section, counter-clockwise; where not free [N m]
  Vec2 floor;                               ///< floor on foot [N]
  std::array<double, kMaxSections> drag{};  ///< drag of pivot and hinges, 0 or more [N m]
  bool solvable = false;  ///< false: the unknowns do not follow from the equations (counts differ, or a dead centre)
  double residual = 0.0;  ///< greatest miss of an equation over the chain's weight
};

/// Direct statics: force and moment balance of every section, drag in the joints by repeated solution until it settles
/// to 1e-12.
Reactions solve_statics(const StaticsProblem& problem);

/// Section the foot belongs to is the last one; the point where it touches the floor is straight below its axle.
Vec2 floor_contact_point(const StaticsProblem& problem, const SectionPoses& X_W);

}  // namespace stowpath
