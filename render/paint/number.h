#pragma once

#include <string>
#include <string_view>

namespace stowpath {

/// At most two decimals, a point whatever the locale, no exponent, no "-0"; what is not finite becomes 0, which a
/// drawing survives.
std::string drawing_number(double value);

/// With the characters that XML keeps for itself written as entities, and control characters left out.
std::string xml_escaped(std::string_view text);

}  // namespace stowpath
