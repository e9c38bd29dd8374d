#pragma once

#include <span>
#include <string>

#include "render/sheet/display_list.h"

namespace stowpath {

/// The sheet as one SVG file: true size in millimetres, one CSS class an ink, live text, layers with ids and titles.
/// The same list gives the same bytes on every machine and in every locale.
std::string paint_svg(const DisplayList& sheet);

// Its parts, for a page that puts them together itself.

/// The style sheet that the classes of painted items stand for.
std::string svg_style();

/// The items alone, without a sheet round them.
std::string svg_items(std::span<const Item> items);

}  // namespace stowpath
