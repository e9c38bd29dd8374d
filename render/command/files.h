#pragma once

#include <istream>
#include <string>
#include <string_view>

namespace stowpath {

/// The text of a file, or of `standard_input` for the name "-"; no more of it than shows the reader that it is too
/// long.
/// @throws FileFault where it is missing, a directory, or cannot be read
std::string read_text(const std::string& name, std::istream& standard_input);

/// Writes a file whole: under a name of its own beside it first, then renamed, so that a file of this name is never
/// half written and an older one stays until the new one is complete. Nothing is left behind on failure.
/// @throws FileFault
void write_whole(const std::string& name, std::string_view text);

}  // namespace stowpath
