#pragma once

#include <imgui.h>

#include "render/paint/palette.h"

namespace stowpath {

/// An ink as the widgets take it.
inline ImVec4 shade(Ink ink, float opacity = 1.0F) {
  const Colour c = paper_colour(ink);
  return {static_cast<float>(c.red) / 255.0F, static_cast<float>(c.green) / 255.0F, static_cast<float>(c.blue) / 255.0F,
          opacity};
}

}  // namespace stowpath
