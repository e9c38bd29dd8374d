#pragma once

#include <string>

#include "render/sheet/view.h"

namespace stowpath {

/// Whether a name ends as the moves are written: .webp, an animated picture, or .html, a page with a slider.
bool is_moves_name(const std::string& name);

/// Writes the moves of a scene as the name's ending says; the file is written whole.
/// @throws FileFault, std::runtime_error where they cannot be painted
void write_moves(const std::string& name, const Subject& subject);

}  // namespace stowpath
