#pragma once

#include <string>

#include "render/studio/ui_scale.h"

namespace stowpath {

/// Why no window can be opened, in few words; empty where a display answers.
std::string display_trouble();

/// What the desktop says of its screen; needs a display.
Screen desktop_screen();

}  // namespace stowpath
