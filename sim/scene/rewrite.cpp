#include "sim/scene/rewrite.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <numeric>

#include "sim/scene/key_value.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kLengthSlack = 2e-6;           // [m]
constexpr double kAngleSlack = 1e-7 * kDegree;  // [rad]

bool has(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

// With as many decimals as it needs, `most` at most.
std::string decimal(double value, int most) {
  std::array<char, 64> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, most);
  std::string out(text.data(), end.ptr);
  if (has(out, ".")) out.erase(out.find_last_not_of('0') + 1);
  if (out.back() == '.') out.pop_back();
  return out == "-0" ? "0" : out;
}

// `3-1/2`, `1/2` or `3`, to 1/64; a decimal where that does not give the value.
std::string inches_text(double inches, std::string_view joint) {
  const auto steps = static_cast<std::int64_t>(std::llround(inches * 64.0));
  if (std::abs(inches * 64.0 - static_cast<double>(steps)) > 1e-4) return decimal(inches, 5);
  const std::int64_t whole = steps / 64, part = steps % 64;
  if (part == 0) return std::to_string(whole);
  const std::int64_t common = std::gcd(part, std::int64_t{64});
  const std::string fraction = std::to_string(part / common) + "/" + std::to_string(64 / common);
  return whole == 0 ? fraction : std::to_string(whole) + std::string(joint) + fraction;
}

// A whole number and its fraction may be parted by a space or by a dash.
std::string_view fraction_joint(std::string_view old) {
  const auto slash = old.find('/');
  if (slash == std::string_view::npos) return "-";
  const auto before = old.find_last_not_of("0123456789", slash - 1);
  return before != std::string_view::npos && before > 0 && old[before] == ' ' && old[before - 1] >= '0' &&
                 old[before - 1] <= '9'
             ? " "
             : "-";
}

bool in_feet(std::string_view old) {
  if (has(old, "ft") || has(old, "feet") || has(old, "foot") || has(old, "\u2032")) return true;
  const auto mark = old.find('\'');
  return mark != std::string_view::npos && old.substr(mark, 2) != "''";
}

std::string feet_text(std::string_view old, double value) {
  const bool marks = !has(old, "ft") && !has(old, "feet") && !has(old, "foot"), open = has(old, " ");
  const auto steps = static_cast<std::int64_t>(std::llround(std::abs(value) / kInch * 64.0));
  const std::int64_t feet = steps / (12 * 64);
  const double inches = std::abs(value) / kInch - 12.0 * static_cast<double>(feet);
  std::string out = (value < 0.0 ? "-" : "") + std::to_string(feet) + (marks ? "'" : open ? " ft" : "ft");
  if (std::abs(inches) < 1e-6) return out;
  const std::string unit = marks ? "\"" : open ? " in" : "in";
  return out + (open ? " " : "") + inches_text(std::max(0.0, inches), fraction_joint(old)) + unit;
}

// Where the number ends and its unit begins.
std::size_t number_end(std::string_view old) {
  const auto last = old.find_last_of("0123456789");
  return last == std::string_view::npos ? 0 : last + 1;
}

std::optional<std::string> length_text_like(std::string_view old, double value, LengthUnit bare) {
  if (in_feet(old)) return feet_text(old, value);
  const std::string unit(old.substr(number_end(old)));
  const Measure one = parse_length("1" + unit, bare);
  if (!one.value) return std::nullopt;
  const bool inches = std::abs(*one.value - kInch) < 1e-12;
  const double number = value / *one.value;
  if (!inches) return decimal(number, *one.value > 0.5 ? 6 : *one.value > 0.005 ? 4 : 3) + unit;
  if (has(old, ".")) return decimal(number, 5) + unit;
  return (number < 0.0 ? "-" : "") + inches_text(std::abs(number), fraction_joint(old)) + unit;
}

std::string angle_text_like(std::string_view old, double value) {
  return decimal(value / kDegree, 7) + std::string(old.substr(number_end(old)));
}

}  // namespace

std::optional<std::string> rewritten_number(const KeyRow& row, std::string_view old, double value, LengthUnit bare) {
  const Form form = number_form(row);
  if ((form != kLength && form != kAngle) || !read_number(row, old, bare).value || !std::isfinite(value))
    return std::nullopt;
  const std::optional<std::string> text =
      form == kLength ? length_text_like(old, value, bare) : angle_text_like(old, value);
  if (!text) return std::nullopt;
  const Measure back = read_number(row, *text, bare);
  const double slack = form == kLength ? kLengthSlack : kAngleSlack;
  return back.value && std::abs(*back.value - value) <= slack ? text : std::nullopt;
}

}  // namespace stowpath
