#pragma once

#include <cstddef>
#include <istream>
#include <string>
#include <string_view>

namespace stowpath {

/// The scene reader takes 1 MiB and says so of more.
inline constexpr std::size_t kMostSceneText = std::size_t{1} << 20U;

/// The text of a file, or of `standard_input` for the name "-"; no more of it than shows the reader that it is too
/// long.
/// @param most  bytes that the reader takes
/// @throws FileFault where it is missing, a directory, or cannot be read
std::string read_text(const std::string& name, std::istream& standard_input, std::size_t most = kMostSceneText);

/// Whether a file of that name can be written, asked before long work; it may turn out otherwise all the same.
/// @throws FileFault
void check_can_write(const std::string& name);

/// Writes a file whole: under a name of its own beside it first, then renamed, so that a file of this name is never
/// half written and an older one stays until the new one is complete. Nothing is left behind on failure.
/// @throws FileFault
void write_whole(const std::string& name, std::string_view text);

}  // namespace stowpath
