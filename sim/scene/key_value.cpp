#include "sim/scene/key_value.h"

#include <array>
#include <charconv>
#include <cmath>

#include "sim/scene/suggest.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

struct FormWords {
  unsigned form;
  std::string_view words;
};

constexpr std::array kFormWords{FormWords{kText, "text"},
                                FormWords{kFlag, "yes or no"},
                                FormWords{kCount, "a whole number"},
                                FormWords{kNumber, "a number"},
                                FormWords{kLength, "a length"},
                                FormWords{kAngle, "an angle"},
                                FormWords{kMass, "a mass"},
                                FormWords{kForce, "a force"},
                                FormWords{kTorque, "a torque"},
                                FormWords{kLengths, "a list of lengths"},
                                FormWords{kAngles, "a list of angles"},
                                FormWords{kMasses, "a list of masses"},
                                FormWords{kSpan, "two numbers, the smaller first"},
                                FormWords{kInterval, "two lengths, the smaller first"},
                                FormWords{kIntervals, "a list of pairs of lengths"},
                                FormWords{kPoints, "a list of points, two lengths each"},
                                FormWords{kMap, "keys of its own"},
                                FormWords{kMaps, "a list of entries with keys of their own"}};

struct ShownUnit {
  double in_si;
  std::string_view name;
};

ShownUnit shown_unit(Form form, LengthUnit bare) {
  if (form == kLength) return bare == LengthUnit::inch ? ShownUnit{kInch, " in"} : ShownUnit{1e-3, " mm"};
  if (form == kAngle) return {kDegree, " degrees"};
  if (form == kMass) return {1.0, " kg"};
  if (form == kForce) return {1.0, " N"};
  if (form == kTorque) return {1.0, " N m"};
  return {1.0, ""};
}

Measure read_measure(Form form, std::string_view text, LengthUnit bare) {
  switch (form) {
    case kLength:
      return parse_length(text, bare);
    case kAngle:
      return parse_angle(text);
    case kMass:
      return parse_mass(text);
    case kForce:
      return parse_force(text);
    case kTorque:
      return parse_torque(text);
    default:
      return parse_number(text);
  }
}

// Rounding in a unit's factor must not push a value off the end of its range.
bool within(double value, const KeyRange& range) {
  const double slack = 1e-12 * (1.0 + std::abs(value));
  return value >= range.low - slack && value <= range.high + slack;
}

}  // namespace

std::string short_number(double value) {
  std::array<char, 32> text{};
  const double magnitude = std::abs(value);
  const double step = magnitude >= 1000 ? 1.0 : magnitude >= 10 ? 0.1 : 0.001;
  const auto result =
      std::to_chars(text.data(), text.data() + text.size(), std::round(value / step) * step, std::chars_format::fixed,
                    magnitude >= 1000 ? 0
                    : magnitude >= 10 ? 1
                                      : 3);
  std::string shown(text.data(), result.ptr);
  if (shown.find('.') != std::string::npos) {
    shown.erase(shown.find_last_not_of('0') + 1);
    if (shown.back() == '.') shown.pop_back();
  }
  return shown == "-0" ? "0" : shown;
}

Form number_form(const KeyRow& row) {
  if (row.takes(kLength | kLengths | kInterval | kIntervals | kPoints)) return kLength;
  if (row.takes(kAngle | kAngles)) return kAngle;
  if (row.takes(kMasses)) return kMass;
  if (row.takes(kSpan)) return kNumber;
  return static_cast<Form>(row.forms & kMeasureForms);
}

Measure read_number(const KeyRow& row, std::string_view text, LengthUnit bare) {
  const Form form = number_form(row);
  Measure read = read_measure(form, text, bare);
  if (!read.value) return read;
  if (form == kCount && *read.value != std::floor(*read.value)) {
    return {std::nullopt, std::string(text) + " is not a whole number", "write a whole number"};
  }
  if (!within(*read.value, row.range)) {
    return {std::nullopt, std::string(text) + " is outside " + range_text(row, bare), ""};
  }
  return read;
}

Measure default_number(const KeyRow& row, LengthUnit bare) {
  constexpr std::string_view kOr = " or ";
  std::string_view text = row.if_missing;
  if (const auto at = text.find(kOr); at != std::string_view::npos) {
    text = bare == LengthUnit::inch ? text.substr(at + kOr.size()) : text.substr(0, at);
  }
  if (text.empty() || text.front() == '(' || row.required()) return {};
  return read_number(row, text, LengthUnit::millimetre);
}

std::string range_text(const KeyRow& row, LengthUnit bare) {
  if (!std::isfinite(row.range.low) || number_form(row) == 0) return "";
  const ShownUnit unit = shown_unit(number_form(row), bare);
  return short_number(row.range.low / unit.in_si) + " to " + short_number(row.range.high / unit.in_si) +
         std::string(unit.name);
}

std::string forms_text(const KeyRow& row) {
  std::vector<std::string_view> forms = row.word_list();
  if (row.takes(kWords)) forms.push_back("a list of these");
  for (const FormWords& form : kFormWords) {
    if (row.takes(form.form)) forms.push_back(form.words);
  }
  return join_words(forms);
}

std::string example_text(const KeyRow& row, LengthUnit bare) {
  const bool one_number = row.example.find_first_not_of("0123456789.-") == std::string_view::npos;
  const bool add_unit = bare == LengthUnit::inch && number_form(row) == kLength && one_number;
  return std::string(row.example) + (add_unit ? " mm" : "");
}

bool count_fits(const KeyRow& row, std::size_t entries) {
  const auto count = static_cast<int>(entries);
  if (row.takes(kInterval | kSpan)) return count == 2;
  return count >= row.range.fewest && count <= row.range.most;
}

std::optional<bool> read_flag(std::string_view text) {
  if (text == "yes" || text == "true") return true;
  if (text == "no" || text == "false") return false;
  return std::nullopt;
}

}  // namespace stowpath
