#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "sim/rehearsal/roll_trip.h"

namespace stowpath {

/// The stair pushed, at one friction.
struct RollRun {
  SpanFriction friction;
  bool rolls = false;                     ///< under the push asked for
  std::optional<double> push_needed;      ///< in the world, at that place and direction; none: it binds [N]
  std::optional<double> push_by_moments;  ///< by statics, with casters that hold nothing sideways [N]
  double speed = 0.0;                     ///< reached before the hand lets go [m/s]
  double coasting = 0.0;                  ///< from there to rest [m]
  double coasting_error = 0.0;            ///< change at half the step [m]
  double yaw = 0.0;                       ///< greatest turn out of line, either way [rad]
  double foot_aside = 0.0;                ///< how far that takes the casters along the rail [m]
  double energy_gained = 0.0;             ///< greatest rise of energy in any time without a hand: numerical [J]
  std::vector<RollStop> stops;            ///< the first met that way, then back the other way
};

/// Does it roll, or bind?
struct RollReport {
  PushOptions asked;
  double floor_level = 0.0;   ///< from which heights are told [m]
  SpanStair stair;
  SpanPush push;              ///< in the plan
  double start = 0.0;         ///< station where it is pushed: the free one nearest home, or the middle [m]
  double offset = 0.0;        ///< of the push's line from the guide line, where the hooks' middle is [m]
  double jam_friction = 0.0;  ///< of hook on pipe, from which no push at this offset moves it
  /// Height from which a push along the rail jams at no friction of the range; the floor where it never does. [m]
  double free_height = 0.0;
  double tips_when_jammed = 0.0;   ///< push that lifts one side, the hooks held fast [N]
  double tips_when_blocked = 0.0;  ///< and with the casters held fast [N]
  IntervalSet free;                ///< stations where it meets nothing [m]
  std::array<RollRun, 3> runs;  ///< easy, middle, hard: low friction of the hooks with much hold of the casters first
};

/// Rolls the standing stair by hand in the plan: over the scene's range of friction, whether it rolls or binds, which
/// push it takes, how it yaws, how far it coasts, what it runs into.
/// @throws std::invalid_argument where the hand is not between floor and rail, the force has no part along the rail, or
///         the stair meets something at every station.
RollReport roll_push(const Scene& scene, const Model& model, const PushOptions& options);

}  // namespace stowpath
