#pragma once

#include <string>
#include <string_view>

#include "sim/trade/figure.h"
#include "sim/trade/measure.h"

namespace stowpath {

/// How a length without a unit reads; with `none` it is refused.
enum class LengthUnit { none, inch, millimetre };

enum class DisplayUnits { imperial, metric };

/// Reads a length as a tape measure or a drawing gives it. Answer in metres.
///
/// `9' 10-1/2"`, `9ft 4-3/16in`, `5'3.5"`, `3/8 in`, `63 1/2 in`, `2.5 m`, `161.3 cm`, `412 mm`; `9' 4` means 9 ft 4 in
/// and so does `9' -4"`; primes, curly quotes, `''` for inches and fraction characters read as what they look like.
/// What could be read in two ways is refused with a hint: `9-4-3/16`, `1 1/2'`, `1,200 mm`, inches of 12 or more after
/// feet.
/// @param bare  the unit of a number without one: a scene's `units:`; `none` on the command line
Measure parse_length(std::string_view text, LengthUnit bare);

/// A length this near to a whole step counts as on it, whichever way it is rounded. A proof takes off guards of 1e-9 m
/// and sums in doubles, so that 12 mm kept exactly come out as 11.999999 mm; they are still 12 mm. A ten thousandth of
/// a millimetre more or less, on the other hand, is far below what any tape, scale or saw can tell [m].
inline constexpr double kShownSlack = 1e-7;

// From here on: metres and radians to text. Each takes a Figure, which says which way it may be rounded.

/// `5'-3 1/2"`: rounded once to 1/denominator inch, then split, so that 12" and 16/16 never show. A minus stands only
/// before what is not zero. Lengths that are not finite or pass 1e9 m give "unbounded", here and in the functions
/// below.
/// @throws std::invalid_argument if denominator is not 1 to 1024.
/// Source: convention; the carry rule is in Programming Praxis, "Feet And Inches" (2011-07-01).
std::string format_feet_inches(Figure metres, int denominator = 16);

/// "412 mm". @throws std::invalid_argument if decimals is not 0 to 6, here and below.
std::string format_millimetres(Figure metres, int decimals = 0);

/// "2.412 m".
std::string format_metres(Figure metres, int decimals);

/// A length for reading: `5'-3 1/2"`, or whole millimetres as "412 mm" below a metre and "2.412 m" from there on.
std::string format_length(Figure metres, DisplayUnits units);

/// A clearance for reading: "3.4 mm" below 10 mm, `3/16"` below a foot, otherwise as format_length. What is not zero
/// never shows as zero: `under 1/16"` for a clearance of at least 0.2 mm, or `less than 0.1 mm below zero`.
std::string format_small_length(Figure metres, DisplayUnits units);

/// "57.3°".
std::string format_degrees(Figure radians, int decimals = 1);

}  // namespace stowpath
