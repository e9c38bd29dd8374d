#pragma once

#include "sim/loads/hardware.h"
#include "sim/loads/rated.h"

namespace stowpath {

/// What one state of the hoist does to what hangs on its lines.
void add_hoist_items(const HardwareInputs& inputs, const HoistState& state, std::vector<HardwareItem>& items);
/// What is not said of the hoist, so that its pieces cannot be called good: how hard its drive pulls when the stair
/// catches, and forces at poses left out.
void add_unsaid_of_hoist(const HoistLoads& loads, std::vector<HardwareItem>& items);

/// What to put in where a piece bears less than the drive pulls when the stair catches.
inline constexpr std::string_view kSnagCure =
    "put in a slipping clutch or a shear pin (hoist.overload), a stop, or a lighter drive";

/// Appended by kind of gear; hardware_list sorts them.
void add_rail_items(const HardwareInputs& inputs, std::vector<HardwareItem>& items);
void add_stair_items(const HardwareInputs& inputs, std::vector<HardwareItem>& items);

/// Species of the wood that screws go into: as given, else the side rails'.
const Species& wood_of(const Screws& screws, const ClimberReport& climber);

/// "4 lag screws 8 mm, 50 mm of thread in SPF"
std::string say_screws(const Scene& scene, const Screws& screws, const Species& wood);

inline constexpr double kMildSteelYield = 36e3 * 6894.757293168;  ///< ASTM A36, from memory [Pa]

}  // namespace stowpath
