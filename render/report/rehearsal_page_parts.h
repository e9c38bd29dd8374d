#pragma once

#include <string_view>

namespace stowpath {

/// The rehearsal page's style: a sheet of paper, buttons large enough for a thumb, nothing by colour alone.
std::string_view rehearsal_page_style();

/// Its script. It finds the run in `run`: frames, names, ropes, events (rehearsal_page.cpp says how).
std::string_view rehearsal_page_script();

}  // namespace stowpath
