#pragma once

#include <optional>

#include "sim/remedy/assess.h"

namespace stowpath {

/// How near the hooks come to the rail's brackets at one pose.
struct HookGap {
  int move = -1;  ///< which of Model::moves it was found in; -1: asked for a pose
  Configuration at;
  double clearance = 0.0;  ///< signed, with the gap along the rail that the pose leaves [m]
  Separation side_view;    ///< of the nearest two pieces in the side view, seen from the room: hook, then bracket [m]
};

/// The least over all moves, to within 10 micrometres; nothing where no bracket comes within a metre.
std::optional<HookGap> least_hook_gap(const Model& model);

/// In the side view alone, at a pose: as at a bracket's station. Nothing where there is no bracket.
std::optional<HookGap> hook_gap_at(const Model& model, const Configuration& at);

/// How far along the rail the nearest hook is from the nearest bracket with the stair at that station: 0 where one lies
/// under the other [m].
double beside_bracket(const Model& model, double station);

/// A hook cut back so that it clears.
struct Trim {
  double wrap = 0.0;  ///< arc left, a whole number of degrees; any tip and point are cut off with the rest [rad]
  double cut = 0.0;   ///< cut off, along the bend's outside and the tip, a point left out [m]
};

/// The longest arc, in whole degrees, with which the whole scene's proof finds no hook near a bracket any more:
/// bisection on full proofs, as a shorter hook is part of a longer one. Nothing where even `least` of arc does not
/// clear.
/// @note Proven for clearance alone. Whether the shorter hook stays on is a question of the forces.
std::optional<Trim> trim_that_clears(const Scene& scene, double least, const AssessOptions& options = {});

/// Whether a dry fit has a finding between a hook and a bracket.
bool meets_bracket(const DryFit& fit);

}  // namespace stowpath
