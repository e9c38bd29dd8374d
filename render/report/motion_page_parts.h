#pragma once

#include <string_view>

namespace stowpath {

/// The style of a page in motion: a sheet of paper, buttons large enough for a thumb, nothing by colour alone.
std::string_view motion_page_style();

/// Its script. It finds the run in `run`: frames, names, ropes, events (motion_page.cpp says how).
std::string_view motion_page_script();

}  // namespace stowpath
