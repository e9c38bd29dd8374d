#pragma once

#include <optional>

#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// The gauges under a running rehearsal: hooks on the pipe, and against time the hoist line's pull at the hand with the
/// limits of who pulls, and where the pipe bears within the arc that the hooks cover; what happened marked, a line at
/// the time shown. What a simulation is stands under them; where the pane is too small for more, that alone.
/// @param shown  the frame of the dial, at whose time the line stands
/// @param size   of the pane [mm of paper]
DisplayList rehearsal_gauges(const RecordingSubject& subject, const RecordedFrame& shown, Vec2 size);

/// The time that lies under a point of that pane, no later than the last frame; none beside the plots [s].
std::optional<double> time_under(const Recording& recording, Vec2 size, Vec2 at);

}  // namespace stowpath
