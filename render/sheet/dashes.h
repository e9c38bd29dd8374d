#pragma once

#include <span>
#include <vector>

#include "render/sheet/display_list.h"

namespace stowpath {

/// A line cut into the strokes of its dash, of the same lengths as the printed ones [mm].
std::vector<std::vector<Vec2>> dashes(std::span<const Vec2> points, bool closed, Dash dash);

}  // namespace stowpath
