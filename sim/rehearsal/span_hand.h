#pragma once

#include <array>
#include <optional>

#include "sim/rehearsal/roll_statics.h"
#include "sim/trade/source.h"
#include "sim/trade/us_units.h"

namespace stowpath {

/// A person who rolls the standing stair along the rail by hand.
struct PushOptions {
  double force = 100.0;       ///< greatest, along the rail; negative towards lower stations [N]
  double height = 1.1;        ///< of the hand above the room's zero, from which floor.level counts too [m]
  double across = 0.0;        ///< of the hand from the stair's middle, along its width [m]
  double turned = 0.0;        ///< of the push out of the rail's line, away from the wall [rad]
  double pace = 0.7;          ///< the hand goes no faster, a slow walk [m/s]
  double step = 1.0 / 960.0;  ///< of the world [s]
};

/// @throws std::invalid_argument where the hand is not between floor and rail, the force has no part along the rail, or
///         the pace is not one of a walk
void check_hand(const PushOptions& hand, const Model& model);

/// The hand in the plan: on the stair's datum line at its height.
SpanPush in_plan(const PushOptions& hand, const Model& model);

/// Height of a hand from which a push along the rail jams at no friction of hook on pipe up to `most_friction`; the
/// floor where it never does. [m]
double free_height(const Model& model, const SpanStair& stair, const SpanFriction& most_friction);

/// Rolling resistance of the casters, easy to hard: a hard polymer wheel on a hard floor. [m]
inline constexpr Interval kCasterArm{0.08 * kInch, 0.2 * kInch};
inline constexpr Source kCasterArmSource{"S-ROLL-2", "polymer on steel to polymer on concrete; the scene names no tyre",
                                         SourceStatus::judgement};

/// Rolling resistance of rollers in the hooks, easy to hard: wheels of steel or of plastic on the steel pipe. [m]
inline constexpr Interval kRollerArm{0.02 * kInch, 0.08 * kInch};
inline constexpr Source kRollerArmSource{"S-ROLL-2", "steel on steel to polymer on steel; the scene names no material",
                                         SourceStatus::judgement};

/// Easy, middle and hard to roll. Casters that scrub hard hold the stair in line, so that counts as easy.
std::array<SpanFriction, 3> span_frictions(const Frictions& range);

/// The greatest push that is looked at, more than anyone gives, and how finely the push needed is found [N].
inline constexpr double kMostPush = 1000.0;
inline constexpr double kPushFound = kMostPush / 4096.0;

/// Slower than this the stair is at rest [m/s].
inline constexpr double kRollCreep = 0.002;

/// Until a hand gives its whole force: a jerk would free the hooks [s].
inline constexpr double kPressing = 0.75;

/// Whether the stair moves, on a rail where it meets nothing, under a push pressed harder and harder to `force`, then
/// held on. Only place and direction of `push` count.
bool moves_under(const SpanStair& stair, const SpanFriction& friction, const SpanPush& push, double force);

/// The least force that moves it, in the world; none: it binds [N].
std::optional<double> push_needed(const SpanStair& stair, const SpanFriction& friction, const SpanPush& push);

/// A rail so long that the stair meets nothing on it.
SpanSite free_rail();

/// What a hand gives that has pressed for so long.
SpanPush pressed(const SpanPush& push, double time);

/// Whether a hook is past the pipe's end.
bool off_the_pipe(const SpanStair& stair, const SpanSite& site, double station);

/// The station nearest to a wanted one at which the stair meets nothing.
/// @throws std::invalid_argument where there is none
double nearest_free(const IntervalSet& free, double wanted);

}  // namespace stowpath
