#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "render/report/json_values.h"
#include "render/report/page.h"
#include "sim/loads/hardware.h"
#include "sim/trade/length.h"

namespace stowpath {

/// "310 N", "42 Nm" or "8.3 MPa", in the units shown.
std::string load_text(LoadKind kind, Figure load, DisplayUnits units);

/// "2.3 MPa" or "330 psi".
std::string stress_text(Figure pascals, DisplayUnits units);

/// How many times its load a piece bears: "0.62", "over 100", "?" where that is not known.
std::string times_text(const HardwareItem& item);

/// How many pieces bear less than they get, and how many have no resistance.
struct HardwareCount {
  long long known = 0, too_weak = 0, unknown = 0;  ///< those that are for others to judge in none
};
HardwareCount count_hardware(const std::vector<HardwareItem>& items);

enum class HardwareVerdict { within, not_said, over };
HardwareVerdict hardware_verdict(const std::vector<HardwareItem>& items);
std::string_view verdict_word(HardwareVerdict verdict);  ///< "WITHIN", "NOT SAID", "OVER"
std::string_view verdict_key(HardwareVerdict verdict);   ///< "within", "not said", "over": for programs

/// "2 of 18 pieces bear less than they get, first the eye: 0.62 of 310 N, raising, lean 62°", or that all bear what
/// they get, and by how much the weakest does; then how many are not rated.
std::string hardware_sentence(const std::vector<HardwareItem>& items, DisplayUnits units);

/// The table, and under it what each resistance is and what else to know of it.
void write_hardware(ReportPage& page, const std::vector<HardwareItem>& items, DisplayUnits units);

Json hardware_json(const std::vector<HardwareItem>& items);

}  // namespace stowpath
