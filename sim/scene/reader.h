#pragma once

#include <string>
#include <string_view>

#include "sim/scene/document.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// Reads a scene from its text.
/// @param name  the file's name, for messages only
/// @throws SceneError with every fault that can be found in one pass.
Scene parse_scene(std::string_view text, const std::string& name);

/// The same from a text that has been taken apart already.
Scene read_scene(const DocumentNode& root, const std::string& name);

}  // namespace stowpath
