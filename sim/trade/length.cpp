#include "sim/trade/length.h"

#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <numbers>
#include <numeric>
#include <stdexcept>

#include "sim/trade/scanner.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kInchesPerFoot = 12.0;

bool is_feet(const std::string& unit) { return unit == "ft" || unit == "foot" || unit == "feet"; }
bool is_inches(const std::string& unit) { return unit == "in" || unit == "inch" || unit == "inches"; }

double metric_unit(const std::string& unit) {
  if (unit == "mm" || unit == "millimetre" || unit == "millimetres") return 1e-3;
  if (unit == "millimeter" || unit == "millimeters") return 1e-3;
  if (unit == "cm" || unit == "centimetre" || unit == "centimetres") return 1e-2;
  if (unit == "centimeter" || unit == "centimeters") return 1e-2;
  if (unit == "m" || unit == "metre" || unit == "metres" || unit == "meter" || unit == "meters") return 1.0;
  return 0.0;
}

// What may follow feet: nothing, or inches below 12, with or without their mark.
double inches_after_feet(Scanner& scan, const Amount& feet) {
  const bool dash = scan.separator();
  if (scan.at_end() && !dash) return 0.0;
  if (!scan.at_number()) {
    throw Refusal{scan.quoted() + " goes on after the feet with what is not inches",
                  "write feet and inches as 9' 4-3/16\""};
  }
  const Amount inches = scan.amount();
  const std::string unit = scan.unit();
  if (!unit.empty() && !is_inches(unit)) {
    throw Refusal{scan.quoted() + " has the unit " + unit + " after feet", "write feet and inches as 9' 4-3/16\""};
  }
  if (feet.decimal)
    throw Refusal{scan.quoted() + " has decimal feet and inches", "write whole feet before inches: 9' 4\""};
  if (inches.value >= kInchesPerFoot) {
    throw Refusal{scan.quoted() + " has 12 inches or more after its feet",
                  "carry them into the feet: 5' 1\", not 4' 13\""};
  }
  return inches.value;
}

double feet_and_inches(Scanner& scan, const Amount& feet) {
  if (feet.fraction) {
    throw Refusal{scan.quoted() + " has a fraction of a foot, which may be meant for inches",
                  "write 1 1/2\" for inches, 1' 6\" or 1.5 ft for feet"};
  }
  const double inches = inches_after_feet(scan, feet);
  return (kInchesPerFoot * feet.value + inches) * kInch;
}

double bare_number(Scanner& scan, const Amount& amount, LengthUnit bare) {
  if (scan.separator() || scan.at_number()) {
    throw Refusal{scan.quoted() + " can be read in two ways",
                  "mark the feet and the inches, as in 9' 4-3/16\", or write one number"};
  }
  scan.finish();
  if (bare == LengthUnit::none) {
    throw Refusal{scan.quoted() + " has no unit", "write the unit: 63 in, 9ft 4in, 412 mm or 2.5 m"};
  }
  if (bare == LengthUnit::inch) return amount.value * kInch;
  if (amount.fraction) {
    throw Refusal{scan.quoted() + " is a fraction where millimetres are meant", "write the unit, 3/8 in, or a decimal"};
  }
  return amount.value * 1e-3;
}

double metric_length(Scanner& scan, const Amount& amount, const std::string& unit) {
  const double factor = metric_unit(unit);
  if (factor == 0.0) {
    throw Refusal{scan.quoted() + " has the unit " + unit + ", which is no unit of length here",
                  "write ft, in, mm, cm or m, as in 9ft 4-3/16in or 2845 mm"};
  }
  if (amount.fraction) throw Refusal{scan.quoted() + " has a fraction of a metric unit", "write a decimal: 12.5 mm"};
  return amount.value * factor;
}

double length(Scanner& scan, LengthUnit bare) {
  const double sign = scan.sign();
  const Amount amount = scan.amount();
  const std::string unit = scan.unit();
  double metres = 0.0;
  if (is_feet(unit)) {
    metres = feet_and_inches(scan, amount);
  } else if (is_inches(unit)) {
    metres = amount.value * kInch;
  } else if (unit.empty()) {
    metres = bare_number(scan, amount, bare);
  } else {
    metres = metric_length(scan, amount, unit);
  }
  scan.finish();
  return sign * metres;
}

constexpr double kAngleSlack = 1e-7;  // as kShownSlack, on a radius of a metre [rad]

bool printable(Figure figure) { return std::abs(figure.value()) <= 1e9; }  // false for nan as well
constexpr const char* kUnbounded = "unbounded";

std::int64_t whole_steps(Figure figure, double step, double slack) {
  return static_cast<std::int64_t>(figure.steps(step, slack));
}

// `steps` of the last of so many decimals.
std::string decimal_text(std::int64_t steps, int decimals) {
  std::int64_t scale = 1;
  for (int i = 0; i < decimals; ++i) scale *= 10;
  const std::int64_t size = std::abs(steps);
  const std::string text = (steps < 0 ? "-" : "") + std::to_string(size / scale);
  if (decimals == 0) return text;
  const std::string rest = std::to_string(size % scale);
  return text + "." + std::string(static_cast<size_t>(decimals) - rest.size(), '0') + rest;
}

// The figure in `unit`, all in the figure's own unit.
std::string with_decimals(Figure figure, double unit, int decimals, double slack) {
  if (decimals < 0 || decimals > 6) throw std::invalid_argument("decimals must be 0 to 6");
  return decimal_text(whole_steps(figure, unit / std::pow(10.0, decimals), slack), decimals);
}

// `3 1/2`, `1/2` or `3`; zero is `0`.
std::string inches_text(std::int64_t steps, std::int64_t denominator, bool show_zero_inches) {
  const std::int64_t whole = steps / denominator, part = steps % denominator;
  if (part == 0) return std::to_string(whole);
  const std::int64_t common = std::gcd(part, denominator);
  const std::string fraction = std::to_string(part / common) + "/" + std::to_string(denominator / common);
  return whole == 0 && !show_zero_inches ? fraction : std::to_string(whole) + " " + fraction;
}

std::string below_one_step(bool negative, const std::string& step) {
  return negative ? "less than " + step + " below zero" : "under " + step;
}

std::string small_inches(Figure metres) {
  constexpr std::int64_t kDenominator = 16;
  const std::int64_t steps = whole_steps(metres, kInch / static_cast<double>(kDenominator), kShownSlack);
  if (std::abs(steps) >= 12 * kDenominator) return format_feet_inches(metres);
  if (steps == 0 && metres.value() != 0.0) return below_one_step(metres.value() < 0, "1/16\"");
  return (steps < 0 ? "-" : "") + inches_text(std::abs(steps), kDenominator, false) + "\"";
}

std::string small_millimetres(Figure metres) {
  const std::int64_t tenths = whole_steps(metres, 1e-4, kShownSlack);
  if (std::abs(tenths) >= 100) return format_length(metres, DisplayUnits::metric);
  if (tenths == 0 && metres.value() != 0.0) return below_one_step(metres.value() < 0, "0.1 mm");
  return format_millimetres(metres, 1);
}

}  // namespace

Measure parse_length(std::string_view text, LengthUnit bare) {
  return measured(text, [bare](Scanner& scan) { return length(scan, bare); });
}

std::string format_feet_inches(Figure metres, int denominator) {
  if (denominator < 1 || denominator > 1024) throw std::invalid_argument("denominator must be 1 to 1024");
  if (!printable(metres)) return kUnbounded;
  const std::int64_t steps = whole_steps(metres, kInch / denominator, kShownSlack), size = std::abs(steps);
  const std::int64_t steps_per_foot = std::int64_t{12} * denominator;
  return (steps < 0 ? "-" : "") + std::to_string(size / steps_per_foot) + "'-" +
         inches_text(size % steps_per_foot, denominator, true) + "\"";
}

std::string format_millimetres(Figure metres, int decimals) {
  return printable(metres) ? with_decimals(metres, 1e-3, decimals, kShownSlack) + " mm" : kUnbounded;
}

std::string format_metres(Figure metres, int decimals) {
  return printable(metres) ? with_decimals(metres, 1.0, decimals, kShownSlack) + " m" : kUnbounded;
}

std::string format_length(Figure metres, DisplayUnits units) {
  if (units == DisplayUnits::imperial) return format_feet_inches(metres);
  if (!printable(metres)) return kUnbounded;
  const bool below_a_metre = std::abs(whole_steps(metres, 1e-3, kShownSlack)) < 1000;
  return below_a_metre ? format_millimetres(metres) : format_metres(metres, 3);
}

std::string format_small_length(Figure metres, DisplayUnits units) {
  if (!printable(metres)) return kUnbounded;
  return units == DisplayUnits::imperial ? small_inches(metres) : small_millimetres(metres);
}

std::string format_degrees(Figure radians, int decimals) {
  if (!printable(radians)) return kUnbounded;
  return with_decimals(radians, std::numbers::pi / 180.0, decimals, kAngleSlack) + "°";
}

}  // namespace stowpath
