#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "sim/trade/source.h"

namespace stowpath {

/// What a board measures after drying and planing.
struct DressedSize {
  double thickness = 0.0;  ///< [m]
  double width = 0.0;      ///< [m]
  SourceStatus status = SourceStatus::memory;
};

/// Dressed size of softwood lumber, dry (at most 19 % moisture), by its nominal name: "2x6", "5/4x6", "2 x 6", "2×6".
/// Empty if the name is not in the table. Timbers (6x6 and up) are dressed green, as the standard has it.
/// Source: American Softwood Lumber Standard PS 20, as listed at
/// engineeringtoolbox.com/softwood-lumber-standard-d_1270.html.
std::optional<DressedSize> dressed_size(std::string_view nominal);

/// The nominal names that dressed_size knows, thinnest first: for hints.
std::vector<std::string_view> lumber_names();

/// A species group as graded lumber is sold, with reference design values for No. 2, 2 to 4 in thick.
struct Species {
  std::string_view name;                       ///< as stamped on the board: "SPF", "DF-L", "HF", "SP"
  std::string_view full_name;                  ///< "Spruce-Pine-Fir"
  double gravity = 0.0;                        ///< oven-dry weight and volume, as fastener formulas want it
  double density = 0.0;                        ///< at 12 % moisture [kg/m3]
  SourceStatus status = SourceStatus::memory;  ///< of gravity; the density is derived from it
  std::string_view source;                     ///< of gravity and density

  double bending = 0.0;           ///< F_b before the size factor, or at 4 in wide where `bending_by_width` [Pa]
  double shear = 0.0;             ///< F_v [Pa]
  double compression = 0.0;       ///< F_c along the grain, of the widest boards and without a size factor [Pa]
  double bearing = 0.0;           ///< F_c perpendicular to the grain [Pa]
  double elasticity = 0.0;        ///< E [Pa]
  double elasticity_min = 0.0;    ///< E_min, for buckling [Pa]
  bool bending_by_width = false;  ///< the table prints F_b for each width, with no size factor (Southern Pine)
  SourceStatus strength_status = SourceStatus::memory;
  std::string_view strength_source;
};

/// By stamped name, full name, or a usual spelling ("dfl", "Douglas Fir-Larch", "hem-fir", "syp"); null if unknown.
const Species* find_species(std::string_view name);

/// The stamped names that find_species knows: for hints.
std::vector<std::string_view> species_names();

/// Reference bending value of a board this wide [Pa], size factor C_F included, load duration and repetition not.
/// @param width  dressed width, in the plane of bending [m]
/// Source: C_F is verified (NELMA rules, section 8); F_b and the widths of Southern Pine are from memory of the NDS
/// Supplement, Tables 4A and 4B.
double bending_value(const Species& species, double width);

/// Density from specific gravity on oven-dry volume [kg/m3].
/// @param moisture  share of the oven-dry weight, 0.12 for 12 %
/// Source: NDS Supplement, section 3.1.3, from memory.
double wood_density(double gravity, double moisture);

}  // namespace stowpath
