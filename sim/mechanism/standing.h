#pragma once

#include <optional>

#include "sim/geometry/interval.h"
#include "sim/mechanism/linkage.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// The joints of the scene's stair. The pivot is the hook circle's centre with the hooks seated under a plumb load: the
/// inside radius less the pipe's below the pipe's centre.
/// @throws SceneError where hinges and sections do not count up, or the hooks are too tight for the pipe.
Linkage make_linkage(const Scene& scene);

/// The lean at which the axle, given on the straight chain, hangs `drop` below the pivot; at full stretch where that is
/// out of its reach [rad].
double lean_for(Vec2 axle, double drop);

/// How the stair stands on its casters with the folds locked at 0.
struct Standing {
  double lean = 0.0;         ///< [rad]
  Interval leans;            ///< over a floor that is up to `floor.uneven` higher or lower [rad]
  double axle_height = 0.0;  ///< of the casters [m]
  Vec2 axle;                 ///< the casters' axle in section 1's frame, the chain straight: along, across [m]
};

/// From axle's height: pivot height - floor - caster radius = A cos(lean) - c sin(lean), A and c the axle's along and
/// across on the straight chain; so lean = acos(height / hypot(A, c)) - atan2(c, A).
/// @throws SceneError where the foot does not reach the floor (by how much), or the stair would stand plumb or lie
/// flat.
Standing stand(const Scene& scene, const Linkage& linkage);

/// Stations of the stair's middle for which every hook lies whole between the rail's ends or stops.
/// @throws SceneError where there is none, or home is not among them.
Interval station_span(const Scene& scene);

/// The hoist's home station: as given, or the ceiling point's; none without a fixed point.
std::optional<double> home_station(const Scene& scene);

/// Farthest that the pivot strays from its seat while the contact wanders by the seat range: 2 (Ri - r) sin(range / 2).
double hook_play(const Scene& scene);

}  // namespace stowpath
