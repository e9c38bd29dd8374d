#pragma once

#include <string>

#include "render/sheet/labels.h"
#include "sim/trade/length.h"

namespace stowpath {

/// "100 mm", "4 in": how long the bar to check a full-size drawing by must measure.
std::string check_bar_length(DisplayUnits units);

/// That bar with its divisions, and two lines under it.
/// @param at  its upper left corner [mm]
void draw_check_bar(DisplayList& list, Labels& labels, Vec2 at, DisplayUnits units, const std::string& first,
                    const std::string& second);

}  // namespace stowpath
