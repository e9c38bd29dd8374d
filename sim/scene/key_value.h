#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "sim/scene/key_table.h"
#include "sim/trade/length.h"

namespace stowpath {

/// The one form of measure that a setting's numbers have, as list or alone: kCount, kNumber, kLength, ...; 0 for none.
Form number_form(const KeyRow& row);

/// Reads one number of a setting and checks its range. Answer in SI.
Measure read_number(const KeyRow& row, std::string_view text, LengthUnit bare);

/// The setting's default as a number in SI, in the file's kind of units; empty where it has none.
Measure default_number(const KeyRow& row, LengthUnit bare);

/// "0 to 180 degrees", "1 to 500 mm": the setting's range as a file with this bare unit would write it; empty for none.
std::string range_text(const KeyRow& row, LengthUnit bare);

/// "a length", "yes or no", "none or a list of lengths": all that the setting takes.
std::string forms_text(const KeyRow& row);

/// The row's example for a file with this bare unit.
std::string example_text(const KeyRow& row, LengthUnit bare);

/// Whether a list of the setting may have so many entries; an interval has two.
bool count_fits(const KeyRow& row, std::size_t entries);

/// A number for a message: three decimals at most, none from 1000 on.
std::string short_number(double value);

/// True for yes and true, false for no and false, empty else.
std::optional<bool> read_flag(std::string_view text);

}  // namespace stowpath
