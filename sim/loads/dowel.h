#pragma once

#include "sim/scene/scene.h"

namespace stowpath {

/// A round steel fastener that ties two members across its length, with a gap between them or none.
struct Dowel {
  double diameter = 0.0;       ///< that bears and bends: of a thread, its root [m]
  double side = 0.0;           ///< its length in the one member [m]
  double main = 0.0;           ///< and in the other [m]
  double gap = 0.0;            ///< between the two [m]
  double side_bearing = 0.0;   ///< stress at which the members crush under it [Pa]
  double main_bearing = 0.0;   ///< [Pa]
  double bending_yield = 0.0;  ///< F_yb of the fastener [Pa]
  double nominal = 0.0;        ///< of a thread, its outside; 0: as `diameter` [m]
};

/// The force across that a dowel may carry for good [N]: the least of the six yield modes, each over its reduction.
/// @param across_grain  the force lies across the grain of a member (reductions of 1/4 in and more nominal grow by a
///        quarter)
/// @throws std::invalid_argument unless diameter, lengths and stresses are positive and the gap is not negative.
/// Source: general dowel equations, AWC Technical Report 12; reductions, NDS Table 12.3.1B: from memory.
double dowel_resistance(const Dowel& dowel, bool across_grain);

/// What a dowel yields at over what it may carry across the grain, at the least: the smallest reduction of NDS Table
/// 12.3.1B; it breaks later still. From memory.
inline constexpr double kDowelReserve = 2.2;

/// Stress at which wood crushes under a dowel [Pa], by its nominal diameter. Wood under 1/4 in dowels has no grain for this
/// purpose.
/// Source: NDS Table 12.3.3: 11200 G along, 6100 G^1.45 / sqrt(D) across, 16600 G^1.84 under 1/4 in (psi): memory.
double dowel_bearing(double gravity, double diameter, bool across_grain);

/// F_yb of wood screws and lags by nominal diameter [Pa]. Source: NDS Appendix I, from memory.
double screw_bending_yield(double diameter);

/// Whether a screw is in the wood deep enough to count across its length at all: 4 diameters of a lag, 6 of a wood screw.
/// Source: NDS 12.1.4.6 and 12.1.5.6, from memory.
bool deep_enough(const Screws& screws);

/// What one screw through a steel plate may carry across its length [N], across the grain: the yield equations with the
/// root's diameter, bearing by the nominal one. 0 where it is not deep enough.
/// @param gravity  of the wood; @param plate  thickness of the steel, at least 1 mm is reckoned with [m]
/// Checked against NDS Table 12K (S-NDS-12K, verified).
double screw_shear(const Screws& screws, double gravity, double plate);

/// The same through a board of that wood [N].
/// @param board  its thickness [m]
double screw_shear_in_wood(const Screws& screws, double gravity, double board);

/// What one screw may carry along its length [N]: NDS withdrawal, side grain, normal duration of load.
double screw_pull(const Screws& screws, double gravity);

}  // namespace stowpath
