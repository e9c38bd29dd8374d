#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "sim/geometry/interval.h"
#include "sim/trade/source.h"

namespace stowpath {

/// A published coefficient of friction, as a range where the source gives one.
/// Sources disagree by a factor of five for steel on steel: clean dry metal from a laboratory holds far better than
/// greasy pipe. What can jam needs the high end, what must hold by friction needs the low end.
struct FrictionPair {
  std::string_view name;  ///< "hemp rope on steel"
  Interval at_rest;
  std::optional<Interval> sliding;
  Source source;
};

/// Pairs that disagree stand in the table side by side.
std::span<const FrictionPair> friction_pairs();

/// A wheel's resistance as a lever arm: a length, unlike a coefficient.
struct RollingPair {
  std::string_view name;  ///< "polymer wheel on steel"
  Interval arm;           ///< [m]
  Source source;
};

std::span<const RollingPair> rolling_pairs();

/// Force that keeps a wheel rolling under `load`: load times arm over radius. In the unit of the load.
double rolling_force(double load, double radius, double arm);

/// Force that starts a caster over the force that keeps it rolling.
inline constexpr Interval kCasterStart{2.0, 2.5};
inline constexpr Source kCasterStartSource{"S-ROLL-start", "common practice", SourceStatus::memory};

}  // namespace stowpath
