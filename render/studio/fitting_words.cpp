#include "render/studio/fitting_words.h"

#include <algorithm>

#include "render/sheet/lettering.h"

namespace stowpath {

std::string fitting_words(const std::vector<std::string>& ways, double size, double width) {
  const auto found =
      std::find_if(ways.begin(), ways.end(), [&](const std::string& way) { return text_width(way, size) <= width; });
  return found == ways.end() ? ways.back() : *found;
}

std::string one_line_of(const std::string& text, double size, double width) {
  constexpr const char* kGoesOn = " ...";
  if (text_width(text, size) <= width) return text;
  return wrap_text(text, size, width - text_width(kGoesOn, size)).front() + kGoesOn;
}

}  // namespace stowpath
