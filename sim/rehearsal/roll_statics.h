#pragma once

#include <optional>

#include "sim/rehearsal/span_world.h"

namespace stowpath {

/// The push that just moves the stair along the rail, by moments: the casters' drag pulls at their axle's line, the
/// outermost hooks take the moment and the sideways part, and each drags by mu times its whole force. Casters do not
/// scrub. The force of the push counts by its direction alone. [N]
///
/// None where no push up to `most` moves it: from L / (2 mu) off the guide line on none ever does (sim/hoist/jam).
/// With a single hook nothing takes a moment: none unless the push's line meets the drags'.
/// @throws std::invalid_argument where the push has no part along the rail.
std::optional<double> moving_push(const SpanStair& stair, const SpanFriction& friction, const SpanPush& push,
                                  double most);

/// How far the push's line passes from the guide line, measured where the middle of the hooks is [m].
double push_offset(const SpanStair& stair, const SpanPush& push);

/// Friction of what slides from which a push this far off the guide line moves the stair no more: L / (2 x) where both
/// outermost hooks slide sideways. A roller at the crown changes nothing of that, for it carries no sideways force. One
/// at the pipe's flank carries it in one of the two hooks, whichever way the stair racks: L / x less its own drag.
/// @param roller_arm  of the rolling resistance [m]
double racking_friction(const SpanStair& stair, double roller_arm, double offset);

/// The offset from which it jams at a friction [m]. @throws std::invalid_argument where nothing drags.
double racking_offset(const SpanStair& stair, const SpanFriction& friction);

/// The push at which one side of the stair lifts, by moments about the line through the outermost hook and caster of the
/// other, where what holds it along the rail does so at height `held_at`: the weight's moment over the height between
/// push and hold. A push above the hold tips it the way it goes, one below the other way. [N]
/// Infinite where they are level.
/// @param along  its sign is the push's along the rail
double tipping_push(const SpanStair& stair, double along, double pushed_at, double held_at);

}  // namespace stowpath
