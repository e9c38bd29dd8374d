#include "render/studio/ui_scale.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace stowpath {
namespace {

constexpr double kUsualDots = 96.0;        // an inch, at scale 1
constexpr double kUsualHeight = 1200.0;    // screens up to this are read at scale 1 [pixels]
constexpr double kQuarters = 4.0, kEighths = 8.0;

double within_limits(double scale) { return std::clamp(scale, kLeastScale, kMostScale); }

std::optional<double> number(const std::string& text) {
  double value = 0.0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  if (fault != std::errc() || end == text.data() || !(value > 0.0) || value > 1e4) return {};
  return value;
}

}  // namespace

std::optional<double> dots_per_inch(const std::string& resources) {
  constexpr const char* kKey = "Xft.dpi:";
  for (std::size_t at = resources.find(kKey); at != std::string::npos; at = resources.find(kKey, at + 1)) {
    if (at > 0 && resources[at - 1] != '\n') continue;
    const std::size_t from = resources.find_first_not_of(" \t", at + std::string(kKey).size());
    if (from != std::string::npos) return number(resources.substr(from, resources.find('\n', from) - from));
  }
  return {};
}

double scale_for(const Screen& screen) {
  double scale = std::max(1.0, screen.height / kUsualHeight);
  if (screen.dots_per_inch) scale = *screen.dots_per_inch / kUsualDots;
  if (const auto asked = number(screen.gdk_scale)) scale = *asked;
  return within_limits(std::round(kQuarters * scale) / kQuarters);
}

double scale_stepped(double scale, int steps) {
  return within_limits((std::round(kEighths * scale) + steps) / kEighths);
}

}  // namespace stowpath
