#pragma once

#include <initializer_list>
#include <string_view>

#include "sim/loads/hardware.h"

namespace stowpath {

/// Appended by kind of gear; hardware_list sorts them.
void add_hoist_items(const HardwareInputs& inputs, std::vector<HardwareItem>& items);
void add_rail_items(const HardwareInputs& inputs, std::vector<HardwareItem>& items);
void add_stair_items(const HardwareInputs& inputs, std::vector<HardwareItem>& items);

/// The user's rating for a piece, by the first of its names that a rating says exactly, else one that contains it; the
/// least of several [N].
std::optional<double> rating_of(const Scene& scene, std::initializer_list<std::string_view> names);

/// A piece that can only be rated by its maker: takes the rating or says that there is none.
HardwareItem rated_item(const Scene& scene, const std::string& name, double load, const std::string& where,
                        std::initializer_list<std::string_view> names);

/// Species of the wood that screws go into: as given, else the side rails'.
const Species& wood_of(const Screws& screws, const ClimberReport& climber);

/// "4 lag screws 8 mm, 50 mm of thread in SPF"
std::string say_screws(const Scene& scene, const Screws& screws, const Species& wood);

inline constexpr double kMildSteelYield = 36e3 * 6894.757293168;  ///< ASTM A36, from memory [Pa]

}  // namespace stowpath
