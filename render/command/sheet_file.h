#pragma once

#include <string>
#include <string_view>

#include "render/sheet/display_list.h"

namespace stowpath {

/// Whether a sheet can be written under that name, which is asked before any work.
/// @param option  that the name was given with, for the message
/// @throws UsageFault
void check_sheet_name(const std::string& option, const std::string& name);

/// Paints the sheet as the name's ending says (.svg, .pdf or .png) and writes the file whole.
/// @throws FileFault
void write_sheet(const std::string& name, const DisplayList& sheet);

/// Whether a file's name is more than the ending, and ends so: ".svg".
bool ends_with(const std::string& name, std::string_view end);

}  // namespace stowpath
