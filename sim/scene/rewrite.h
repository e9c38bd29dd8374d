#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "sim/scene/key_table.h"
#include "sim/trade/length.h"

namespace stowpath {

/// A length or angle with another value, written in the manner of the old text: a bare number stays one in the file's
/// units, `9' 4"` stays feet and inches, `2.5 m` metres, `70 deg` degrees.
/// @param value  in SI
/// @returns a text that reads back as `value` to within 2 µm or a ten-millionth of a degree; none for other kinds of
///          setting, or where the old text is none of its kind
std::optional<std::string> rewritten_number(const KeyRow& row, std::string_view old, double value, LengthUnit bare);

}  // namespace stowpath
