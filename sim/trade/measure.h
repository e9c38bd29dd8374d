#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace stowpath {

/// What a written measurement turned out to be: a value, or what is wrong with it and what to write instead.
struct Measure {
  std::optional<double> value;  ///< in SI (m, kg, N, N m, rad), always finite; empty when the text was refused
  std::string problem;          ///< what is wrong, one line; empty when there is a value
  std::string hint;             ///< what to write instead; empty when there is a value
};

/// Reads a mass with its unit: "12 lb", "0.6 kg", "8 oz", "350 g". Fractions go with lb and oz. Answer in kg.
/// No locale is consulted, here or in the readers below: the decimal mark is a point, and there is no exponent.
Measure parse_mass(std::string_view text);

/// Reads a force with its unit: "2000 N", "8 kN", "450 lb" or "450 lbf". Answer in N.
Measure parse_force(std::string_view text);

/// Reads a torque with its unit: "12 Nm", "9 ft-lb", "108 in-lb". Answer in N m.
Measure parse_torque(std::string_view text);

/// Reads an angle in degrees, with or without its unit: "70", "70 deg", "70°". Answer in radians.
Measure parse_angle(std::string_view text);

/// Reads a plain decimal number without a unit: no exponent, no hexadecimal, no nan, no inf.
Measure parse_number(std::string_view text);

/// Without the spaces at its ends.
std::string trimmed(const std::string& text);

}  // namespace stowpath
