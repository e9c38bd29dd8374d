#pragma once

#include <string_view>

namespace stowpath {

/// The text of scenes/demo.yaml as it was when the program was built.
std::string_view demo_scene_text();

}  // namespace stowpath
