#pragma once

#include <span>

namespace stowpath {

/// What letters that the lettering lacks, and widgets, are set in where this file is.
inline constexpr const char* kTextFont = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf";

/// The lettering's font, Routed Gothic, as the bytes of its TrueType file: compiled in, so that a drawing looks the same
/// on a machine without it. SIL Open Font License 1.1.
std::span<const unsigned char> lettering_font();

}  // namespace stowpath
