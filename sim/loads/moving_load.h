#pragma once

#include <span>
#include <vector>

#include "sim/loads/beam.h"
#include "sim/loads/influence.h"

namespace stowpath {

/// A greatest value under a load that moves: how much, where along the beam, and where the load then stands.
struct MovingPeak {
  double value = 0.0;
  double at = 0.0;        ///< [m]
  double position = 0.0;  ///< of the moving load's zero [m]
};

struct MovingPeaks {
  MovingPeak sagging;             ///< [N m]
  MovingPeak hogging;             ///< as a positive number [N m]
  MovingPeak down;                ///< deflection [m]
  std::vector<MovingPeak> press;  ///< by support: its greatest upward reaction [N]
  std::vector<MovingPeak> hold;   ///< by support: how much it must hold the beam down, 0 if never [N]
};

/// Greatest moments at one place of the beam, each at least 0.
struct MovingMoments {
  MovingPeak sagging;  ///< [N m]
  MovingPeak hogging;  ///< as a positive number [N m]
};

/// Greatest values while a group of loads moves along the beam.
///
/// Moments and the deflection: the travel is looked at in steps of at most 1/64 of the shortest span, and each best
/// step is refined by the golden section between its neighbours. Reactions are exact: see moving_moments.
/// @param group  loads by their distance from the group's zero; one load is {{0, force}}
/// @param travel  of the group's zero; one place where lo = hi
/// @throws std::invalid_argument if travel is empty or takes a load off the beam.
/// Source: golden section, Kiefer, Proc. AMS 4(3), 1953, 502-506 (named from memory).
MovingPeaks moving_peaks(const Influence& influence, std::span<const PointLoad> group, Interval travel);
MovingPeaks moving_peaks(const Beam& beam, std::span<const PointLoad> group, Interval travel);

/// Greatest moments at one place while a group of loads moves along the beam. Exact: between the positions where a load
/// passes a support or the place itself, the moment there is a cubic of the position, whose tops are known.
/// @throws std::invalid_argument as moving_peaks does, or if `at` is off the beam.
MovingMoments moving_moments(const Influence& influence, std::span<const PointLoad> group, Interval travel, double at);

/// The group's loads when its zero stands at `position`.
std::vector<PointLoad> group_at(std::span<const PointLoad> group, double position);

}  // namespace stowpath
