#pragma once

#include <string>
#include <string_view>

#include "sim/scene/scene.h"

namespace stowpath {

/// Reads a scene from its text.
/// @param name  the file's name, for messages only
/// @throws SceneError with every fault that can be found in one pass.
Scene parse_scene(std::string_view text, const std::string& name);

}  // namespace stowpath
