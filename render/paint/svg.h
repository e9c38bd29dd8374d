#pragma once

#include <string>

#include "render/sheet/display_list.h"

namespace stowpath {

/// The sheet as one SVG file: true size in millimetres, one CSS class an ink, live text, layers with ids and titles.
/// The same list gives the same bytes on every machine and in every locale.
std::string paint_svg(const DisplayList& sheet);

}  // namespace stowpath
