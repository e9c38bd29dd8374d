#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/trade/source.h"

namespace stowpath {

enum class RopeMake { nylon_three_strand, nylon_double_braid, nylon_diamond_braid, manila, polypropylene };

std::string_view rope_make_text(RopeMake make);

/// A published breaking strength of new rope.
struct RopeStrength {
  RopeMake make = RopeMake::nylon_three_strand;
  double diameter = 0.0;               ///< [m]
  double breaking = 0.0;               ///< new and without a knot [N]
  std::optional<double> working_load;  ///< the most that the same table allows [N]
  Source source;
};

/// What tables print for this make and diameter, in the order read: tables disagree by 3 to 11 %, and none is an
/// average. Empty where none was found. Nylon diamond braid has no row at any diameter, so its strength is the user's
/// to give.
/// @param diameter  [m], within 0.2 mm of a listed size
std::vector<RopeStrength> rope_strengths(RopeMake make, double diameter);

/// The examination rule for fibre rope: 900 C² pounds for manila of C inches around, times a factor of the make. [N]
/// @param diameter  [m]
/// @return empty for makes that the rule does not name
/// Source: S-ROPE-USCG, westmarine.com/boatsafe/marlinespike_3, verified.
std::optional<double> exam_rule_strength(RopeMake make, double diameter);

/// What a knot or splice leaves of the strength.
struct Knot {
  std::string_view name;  ///< "bowline"
  double listed = 1.0;    ///< share that the old tables print
  Interval range;         ///< what other sources allow for, from worst to best
  Source source;
};

/// Fixed shares are old, from natural fibre, and disputed: show the range beside them.
std::span<const Knot> knots();
/// Null if unknown.
const Knot* find_knot(std::string_view name);

/// Breaking over working load for general use. More where people can be hurt, loads are unknown or sudden, or knots
/// are tied; 15 is some makers' figure where a life depends on it.
inline constexpr Interval kRopeDesignFactor{5.0, 12.0};
inline constexpr Source kRopeDesignFactorSource{"S-ROPE-DF", "Cordage Institute CI 1401-06, on everstrongrope.com",
                                                SourceStatus::verified};
inline constexpr double kRopeLifeFactor = 15.0;
inline constexpr Source kRopeLifeFactorSource{"S-ROPE-DFlife", "cancord.com, rope precautions", SourceStatus::verified};

/// Share that nylon loses when wet.
inline constexpr Interval kNylonWetLoss{0.10, 0.20};
inline constexpr Source kNylonWetLossSource{"S-ROPE-wet", "UFC 4-159-03 Table 6-8 and a hiker's notes",
                                            SourceStatus::verified};

/// In the unit of `breaking`. @throws std::invalid_argument unless factor is greater than 0.
double rope_working_load(double breaking, double knot_share, double design_factor);

/// Stretch of nylon double braid, as if linear up to the break. In the unit of `length`.
/// @param share_of_breaking  tension over breaking strength
/// Source: S-ROPE-AE, UFC 4-159-03 Table 6-8 (33.6 kip breaking, AE 118.9 kip), verified.
double double_braid_stretch(double length, double share_of_breaking);

/// A least ratio between what the rope bends round and the rope's diameter.
struct BendRule {
  std::string_view name;  ///< "braided rope on a turning sheave"
  double ratio = 0.0;
  Source source;
};

std::span<const BendRule> bend_rules();

}  // namespace stowpath
