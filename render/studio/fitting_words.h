#pragma once

#include <string>
#include <vector>

namespace stowpath {

/// The first of several ways to say something that is no wider than that; where none is, the last.
/// @param ways   never empty, the fullest first
/// @param size   of a capital [mm]
/// @param width  [mm]
std::string fitting_words(const std::vector<std::string>& ways, double size, double width);

/// A text cut to one line of that width, with " ..." where it goes on.
std::string one_line_of(const std::string& text, double size, double width);

}  // namespace stowpath
