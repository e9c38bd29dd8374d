#include "sim/trade/figure.h"

#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace stowpath {
namespace {

constexpr double kOfStep = 1e-6;  // of a step, which counts as none

double power_of_ten(int exponent) {
  double out = 1.0;
  for (int i = 0; i < exponent; ++i) out *= 10.0;
  return out;
}

}  // namespace

double Figure::steps(double step, double slack) const {
  const double exact = value_ / step;
  switch (rounding_) {
    case Rounding::down:
      return std::floor(exact + slack / step);
    case Rounding::up:
      return std::ceil(exact - slack / step);
    case Rounding::nearest:
      return std::copysign(std::floor(std::abs(exact) + 0.5 + kOfStep), exact);
  }
  return exact;
}

std::string format_decimal(Figure figure, int decimals) {
  if (decimals < 0 || decimals > 9) throw std::invalid_argument("decimals must be 0 to 9");
  if (!(std::abs(figure.value()) <= 1e15)) return "unbounded";
  const double scale = power_of_ten(decimals);
  const double shown_value = figure.steps(1.0 / scale, kOfStep / scale) / scale;
  std::array<char, 40> text{};
  const auto end =
      std::to_chars(text.data(), text.data() + text.size(), shown_value, std::chars_format::fixed, decimals).ptr;
  std::string shown(text.data(), end);
  if (shown.front() == '-' && shown.find_first_not_of("-0.") == std::string::npos) shown.erase(0, 1);
  return shown;
}

}  // namespace stowpath
