#pragma once

#include <array>
#include <span>
#include <vector>

#include "render/sheet/display_list.h"

namespace stowpath {

// Stroke, gap, and so on, over and over [mm].
inline constexpr std::array<double, 2> kHiddenDash{2.2, 1.2};
inline constexpr std::array<double, 4> kChainDash{6.0, 1.2, 1.2, 1.2};

/// What a dash repeats; empty for a solid line [mm].
std::span<const double> dash_lengths(Dash dash);

/// A line cut into the strokes of its dash [mm].
std::vector<std::vector<Vec2>> dashes(std::span<const Vec2> points, bool closed, Dash dash);

}  // namespace stowpath
