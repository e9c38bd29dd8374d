#pragma once

#include <string>
#include <vector>

#include "sim/geometry/rounded_polygon.h"
#include "sim/scene/scene.h"
#include "sim/scene/scene_error.h"
#include "sim/trade/figure.h"

namespace stowpath {

/// @throws SceneError always: one fault, placed at `key`.
[[noreturn]] void refuse(const Scene& scene, const std::string& key, const std::string& problem,
                         const std::string& hint = "");

/// An outline of the file.
/// @throws SceneError at `key` where it is not convex, not counter-clockwise or repeats a vertex.
RoundedPolygon outline_of(const Scene& scene, const std::string& key, const std::vector<Vec2>& corners, double radius);

/// A length as the file's own units would show it.
std::string say_length(const Scene& scene, Figure metres);

}  // namespace stowpath
