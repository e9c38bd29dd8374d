#pragma once

#include "render/sheet/view.h"

namespace stowpath {

inline constexpr double kZoomStep = 1.15;   ///< nearer or further by one notch of the wheel, or one key
inline constexpr double kUpperShare = 0.6;  ///< of the height, where two drawings hang under each other

/// What of a side view's pane is left for the findings' notes, at its right edge; narrow panes have none [mm].
double notes_width(double pane);

/// The frame that shows the whole room in a pane of that size, with air for dimensions and notes.
ViewFrame whole_side(const Subject& subject, Vec2 size);

/// The frame zoomed by a factor about a point of the pane, which keeps its place; between 1:1 and 1:2000.
ViewFrame zoomed(const ViewFrame& frame, Vec2 about, double factor);

/// The point of the side view under a point of the pane: out, up [m].
Vec2 under(const ViewFrame& frame, Vec2 paper);

/// The frame of the span view that shows the whole room over the story stick: which station lies under a point of it.
ViewFrame rail_frame(const Subject& subject, Vec2 size);

}  // namespace stowpath
