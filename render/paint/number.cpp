#include "render/paint/number.h"

#include <array>
#include <charconv>
#include <cmath>

namespace stowpath {

std::string drawing_number(double value) {
  constexpr double kFarthest = 1e9;  // far off any paper
  if (!std::isfinite(value) || std::abs(value) > kFarthest) return "0";
  const double hundredths = std::round(value * 100.0);
  if (hundredths == 0.0) return "0";
  std::array<char, 40> buffer{};
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), hundredths / 100.0, std::chars_format::fixed).ptr;
  return {buffer.data(), end};
}

std::string xml_escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '"') {
      out += "&quot;";
    } else if (static_cast<unsigned char>(c) >= 0x20) {
      out += c;
    }
  }
  return out;
}

}  // namespace stowpath
