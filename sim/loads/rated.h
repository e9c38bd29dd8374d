#pragma once

#include <initializer_list>
#include <string_view>

#include "sim/loads/hardware.h"

namespace stowpath {

/// The user's rating for a piece, by the first of its names that a rating says exactly, else one that contains it; the
/// one that allows least of several, null where there is none.
const Rating* rating_of(const Scene& scene, std::initializer_list<std::string_view> names);

/// Breaking over working load where a breaking strength comes without a design factor: 5 as for shackles, eyebolts and
/// rings (ASME B30.26, S-B30-26), and 10 where people may be below while it hangs at rest (common practice, from
/// memory: CI 1401 names 5 to 12 for ropes).
inline constexpr double kUsualFactor = 5.0, kOverPeople = 10.0;

/// What a piece may carry by its rating: as stated, or the breaking strength over its design factor. [N]
/// @param usual  the design factor where none is given
double allowed_by(const Rating& rating, double usual = kUsualFactor);

/// Gives an item that rating as its resistance, with its words.
void rate(HardwareItem& item, const Rating& rating, double usual = kUsualFactor);

/// A piece that can only be rated by its maker: takes the rating or says that there is none.
HardwareItem rated_item(const Scene& scene, const std::string& name, double load, const std::string& where,
                        std::initializer_list<std::string_view> names, double usual = kUsualFactor);

/// One more note after those that an item has.
void also(HardwareItem& item, const std::string& note);

}  // namespace stowpath
