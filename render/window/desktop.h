#pragma once

#include "render/studio/ui_scale.h"

namespace stowpath {

/// What the desktop says of its screen; needs a display.
Screen desktop_screen();

}  // namespace stowpath
