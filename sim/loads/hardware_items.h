#pragma once

#include <initializer_list>
#include <string_view>

#include "sim/loads/hardware.h"
#include "sim/loads/rated.h"

namespace stowpath {

// What one state does to the pieces of one kind of gear, a piece once for each of its places; `Pieces` keeps the worst.

void add_hoist_items(const HardwareInputs& inputs, const HoistState& state, std::vector<HardwareItem>& items);
/// What is not said of the hoist, so that its pieces cannot be called good: how hard its drive pulls when the stair
/// catches, and forces at poses left out.
void add_unsaid_of_hoist(const HoistLoads& loads, std::vector<HardwareItem>& items);

/// What to put in where a piece bears less than the drive pulls when the stair catches.
inline constexpr std::string_view kSnagCure =
    "put in a slipping clutch or a shear pin (hoist.overload), a stop, or a lighter drive";

/// The stair's own pieces while it hangs on its line.
std::vector<HardwareItem> hoisted_stair_items(const HardwareInputs& inputs, const HoistState& state);
std::vector<HardwareItem> standing_items(const HardwareInputs& inputs, const StandingState& state);
/// The pipe, every bracket and its screws.
std::vector<HardwareItem> rail_items(const HardwareInputs& inputs, const RailCase& rail);

/// What breaks a screw's hold over what it may carry: 4.5 for lags, 5.5 for wood screws, withdrawn. Source: S-FPL-lagP,
/// from memory.
double screw_reserve(const Screws& screws);

/// Species of the wood that screws go into: as given, else the side rails'.
const Species& wood_of(const Screws& screws, const ClimberReport& climber);

/// "4 lag screws 8 mm, 50 mm of thread in SPF"
std::string say_screws(const Scene& scene, const Screws& screws, const Species& wood);

inline constexpr double kMildSteelYield = 36e3 * 6894.757293168;  ///< ASTM A36, from memory [Pa]

// What breaks a piece over what it may carry for good; all from memory. Steel by its tensile strength of 58 ksi over
// the yield of 36, times the 1.67 of bending; wood by ASTM D245, the divisor of its strength in bending and shear.
inline constexpr double kSteelReserve = kSteelFactor * 58.0 / 36.0;
inline constexpr double kWoodReserve = 2.1;

}  // namespace stowpath
