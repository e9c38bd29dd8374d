#pragma once

#include <string>

namespace stowpath {

/// "12.30": a point whatever the locale, no exponent, no "-0". What is not finite or passes 1e15 gives "unbounded".
/// @throws std::invalid_argument if decimals is not 0 to 9.
std::string format_decimal(double value, int decimals);

}  // namespace stowpath
