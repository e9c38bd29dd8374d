#pragma once

#include "sim/rehearsal/span_world.h"

namespace stowpath {

/// Checks all that goes into a span world before Box2D sees it: Debian's build of Box2D ends the program on a bad
/// shape.
/// @throws std::invalid_argument where a number is not finite, a coordinate is over 100 m, a mass or size is not
///         positive, friction is out of all reason, or the step is not within 0 to 1/60 s.
void check_span(const SpanStair& stair, const SpanSite& site, const SpanFriction& friction, double station,
                double step);

}  // namespace stowpath
