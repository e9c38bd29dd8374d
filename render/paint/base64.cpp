#include "render/paint/base64.h"

#include <algorithm>
#include <string_view>

namespace stowpath {

std::string base64(std::span<const unsigned char> bytes) {
  constexpr std::string_view kLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::size_t here = std::min<std::size_t>(3, bytes.size() - i);
    unsigned group = 0;
    for (std::size_t k = 0; k < 3; ++k) group = group << 8U | (k < here ? bytes[i + k] : 0U);
    for (std::size_t k = 0; k < 4; ++k) out += k <= here ? kLetters[group >> (18 - 6 * k) & 63U] : '=';
  }
  return out;
}

}  // namespace stowpath
