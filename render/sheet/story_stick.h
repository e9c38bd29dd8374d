#pragma once

#include "render/sheet/labels.h"
#include "render/sheet/view.h"

namespace stowpath {

/// Height of the strip [mm].
inline constexpr double kStickHeight = 32.0;

/// The strip that shows stations in full: brackets and joints, where the stair can stand, where what blocks it, where
/// it folds and parks, over a rule.
/// @param frame  gives the stations' scale; zero.y is the strip's upper edge [mm]
/// @param left   where the names of the lanes begin [mm]
void draw_story_stick(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame, double left);

}  // namespace stowpath
