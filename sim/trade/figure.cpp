#include "sim/trade/figure.h"

#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace stowpath {

std::string format_decimal(double value, int decimals) {
  if (decimals < 0 || decimals > 9) throw std::invalid_argument("decimals must be 0 to 9");
  if (!(std::abs(value) <= 1e15)) return "unbounded";
  std::array<char, 40> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals).ptr;
  std::string shown(text.data(), end);
  if (shown.front() == '-' && shown.find_first_not_of("-0.") == std::string::npos) shown.erase(0, 1);
  return shown;
}

}  // namespace stowpath
