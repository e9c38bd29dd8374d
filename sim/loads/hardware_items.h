#pragma once

#include <initializer_list>
#include <string_view>

#include "sim/loads/hardware.h"

namespace stowpath {

// What one state does to the pieces of one kind of gear; `Pieces` keeps the worst of each.

std::vector<HardwareItem> hoist_items(const HardwareInputs& inputs, const HoistState& state);
/// The drive of which nothing is said, so that nothing is known of what it does to a stair that catches.
HardwareItem unsaid_drive(const HoistLoads& loads);
/// The stair's own pieces while it hangs on its line.
std::vector<HardwareItem> hoisted_stair_items(const HardwareInputs& inputs, const HoistState& state);
std::vector<HardwareItem> standing_items(const HardwareInputs& inputs, const StandingState& state);
/// The pipe, every bracket and its screws.
std::vector<HardwareItem> rail_items(const HardwareInputs& inputs, const RailCase& rail);

/// What breaks a screw's hold over what it may carry: 4.5 for lags, 5.5 for wood screws, withdrawn. Source: S-FPL-lagP,
/// from memory.
double screw_reserve(const Screws& screws);

/// The user's rating for a piece, by the first of its names that a rating says exactly, else one that contains it; the
/// least of several, null where there is none.
const Rating* rating_of(const Scene& scene, std::initializer_list<std::string_view> names);

/// Gives an item that rating as its resistance.
void rate(HardwareItem& item, const Rating& rating);

/// A piece that can only be rated by its maker: takes the rating or says that there is none.
HardwareItem rated_item(const Scene& scene, const std::string& name, double load, const std::string& where,
                        std::initializer_list<std::string_view> names);

/// Species of the wood that screws go into: as given, else the side rails'.
const Species& wood_of(const Screws& screws, const ClimberReport& climber);

/// "4 lag screws 8 mm, 50 mm of thread in SPF"
std::string say_screws(const Scene& scene, const Screws& screws, const Species& wood);

inline constexpr double kMildSteelYield = 36e3 * 6894.757293168;  ///< ASTM A36, from memory [Pa]

// What breaks a piece over what it may carry for good; all from memory. Steel by its tensile strength of 58 ksi over the
// yield of 36, times the 1.67 of bending; wood by ASTM D245, the divisor of its strength in bending and shear.
inline constexpr double kSteelReserve = kSteelFactor * 58.0 / 36.0;
inline constexpr double kWoodReserve = 2.1;

}  // namespace stowpath
