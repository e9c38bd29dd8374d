#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/mechanism/linkage.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// Which way the rope runs through its sheaves, and so which way their friction acts.
enum class Haul {
  raising,  ///< the hand hauls in: tension grows towards it at every sheave
  holding,  ///< nothing moves and friction is left out
  lowering  ///< the hand pays out: tension falls towards it
};

/// A place where the rope is made fast, turns, or ends.
struct RopePoint {
  int section = -1;      ///< from 0; -1: the room
  Vec2 at;               ///< in that frame [m]
  double station = 0.0;  ///< from the stair's middle, or of the room where section is -1 and it does not roll [m]
  bool rolls = false;    ///< a point of the room that rolls along with the stair
  bool sheave = false;   ///< the rope runs over it; else it is tied or held
  std::string name;      ///< "ceiling point", "pick", "lead 1", "hand", ...
};

/// One rope from its dead end to the hand, cleat or drum.
struct Rigging {
  std::vector<RopePoint> points;  ///< dead end first, hand last; segment i runs from point i to point i + 1
  int parts = 1;                  ///< segments between the ceiling point and the pick
  SheaveKind sheaves = SheaveKind::plain;
  double K = 1.0;  ///< tension grows by this factor at each sheave in the geometric model
  SheaveFriction model = SheaveFriction::geometric;
  double diameter = 0.0;   ///< [m]
  double link = 0.0;       ///< each part ends this far short of the pick, where its block hangs on a spreader [m]
  double tail = 0.0;       ///< spare at the hand with everything down [m]
  double knot = 0.0;       ///< rope that the knot at the dead end takes [m]
  bool hand_given = true;  ///< false: where the hand pulls is an assumption (see hand_place)
};

/// Factor of tension at one sheave: 1.09 plain, 1.04 on rollers or balls.
/// Source: Wire Rope Users Manual, 4th edition, page 88 (sources.md, S-TKL-geo).
double sheave_factor(SheaveKind kind);

/// The hoist line as the scene rigs it: `parts` segments between ceiling point and pick, dead end at the ceiling point
/// for an even number and at the pick for an odd one; from the last sheave at the ceiling point the fall runs over the
/// leads to the hand (`hand_place`).
/// @throws std::invalid_argument without a hoist with a ceiling point.
Rigging hoist_rigging(const Scene& scene);

/// The fold line: tied at its first point, over sheaves at the points between. Its fall is held or tied on the section
/// where it ends, so that it loads the stair only between its points. Empty without one.
std::optional<Rigging> fold_rigging(const Scene& scene);

/// Tension of each segment for 1 N at the hand.
///
/// Geometric: a factor K at each sheave. Additive ("10 % of the load for each sheave"): the parts share the load alike
/// and the hand pulls (1 + n/10) times a part's, n sheaves; lead sheaves add their tenth each. Published for raising
/// only; lowering divides by the same factor, which is our reading. Source: sources.md 5.1, S-TKL-geo and S-TKL-10pct.
std::vector<double> tension_shares(const Rigging& rigging, Haul haul);

/// Number of sheaves, lead sheaves included.
int sheave_count(const Rigging& rigging);

}  // namespace stowpath
