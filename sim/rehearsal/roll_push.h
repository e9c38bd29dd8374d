#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "sim/rehearsal/roll_statics.h"
#include "sim/trade/source.h"
#include "sim/trade/us_units.h"

namespace stowpath {

/// A person who rolls the standing stair along the rail by hand.
struct PushOptions {
  double force = 100.0;       ///< greatest, along the rail; negative towards lower stations [N]
  double height = 1.1;        ///< of the hand above the floor's zero [m]
  double across = 0.0;        ///< of the hand from the stair's middle, along its width [m]
  double turned = 0.0;        ///< of the push out of the rail's line, away from the wall [rad]
  double pace = 0.7;          ///< the hand goes no faster, a slow walk [m/s]
  double step = 1.0 / 960.0;  ///< of the world [s]
};

/// Something that the stair runs into, pushed on at a walk.
struct RollStop {
  std::string part, thing;  ///< empty part: the hooks leave the pipe's end
  double station = 0.0;     ///< of the stair's middle [m]
  double speed = 0.0;       ///< [m/s]
  double energy = 0.0;      ///< of motion then [J]
};

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

/// Rolling resistance of the casters, easy to hard: a hard polymer wheel on a hard floor. [m]
inline constexpr Interval kCasterArm{0.08 * kInch, 0.2 * kInch};
inline constexpr Source kCasterArmSource{"S-ROLL-2", "polymer on steel to polymer on concrete; the scene names no tyre",
                                         SourceStatus::judgement};

/// The greatest push that is looked at, more than anyone gives, and how finely the push needed is found [N].
inline constexpr double kMostPush = 1000.0;
inline constexpr double kPushFound = kMostPush / 4096.0;

/// Rolls the standing stair by hand in the plan: over the scene's range of friction, whether it rolls or binds, which
/// push it takes, how it yaws, how far it coasts, what it runs into.
/// @throws std::invalid_argument where the hand is not between floor and rail, the force has no part along the rail, or
///         the stair meets something at every station.
RollReport roll_push(const Scene& scene, const Model& model, const PushOptions& options);

}  // namespace stowpath
