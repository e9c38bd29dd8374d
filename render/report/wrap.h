#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace stowpath {

/// Where the next word from `start` ends: at a space, never the one inside a mixed number such as `3 1/2"`, nor the one
/// between a number and its unit; the text's size where there is none.
std::size_t next_break(std::string_view text, std::size_t start);

/// Characters of a UTF-8 text, which is its width on a terminal for all that the reports print.
std::size_t columns(std::string_view utf8);

/// `text` broken into lines of at most `width` columns, the first after `first` and the others after `rest`, each line
/// ended. A word longer than the line stands alone.
std::string wrapped(std::string_view text, std::size_t width, std::string_view first, std::string_view rest);

}  // namespace stowpath
