#pragma once

#include <string>
#include <vector>

#include "sim/mechanism/model.h"
#include "sim/trade/figure.h"

namespace stowpath {

/// Two faces that lie this near to each other lie on each other: 2 mm, and a micrometre for rounding [m].
inline constexpr double kOnFace = 0.002001;
/// An eye, a pick or a pulley on the stair reaches this far to the wood that it is fixed to [m].
inline constexpr double kEyeReach = 0.060001;
/// A ceiling point or a lead sheave reaches this far to what it hangs from [m].
inline constexpr double kSheaveReach = 0.100001;

/// One link of a chain from a part down to the building: what holds a part, and how.
struct Fastening {
  std::string part;       ///< what is held, by a name of its own: "bracket at 300 mm", "section 2"
  std::string holder;     ///< what holds it; where nothing does, the nearest thing that could
  std::string how;        ///< "the plate lies on its face"; where the link is broken, what is wrong
  bool ok = true;         ///< false: fastened to nothing, or only in part
  double distance = 0.0;  ///< from the part to its holder, 0 where they touch [m]
  std::string kind{};     ///< broken: what is told to hang loose, without its place: "bracket"
  std::string place{};    ///< broken: which of them: "at 300 mm"; empty where there is only one
  std::string remedy{};   ///< broken: what to do
  bool in_part = false;   ///< broken: something holds it, but not as much of it as has to be held
};

using Fastenings = std::vector<Fastening>;

/// What all makers of fastenings look at.
struct HoldingView {
  const Scene& scene;
  const Model& model;  ///< with stair and room already put together
};

/// A length of any sign and size as the file's own units would show it.
std::string say_distance(const Scene& scene, Figure metres);

/// "at 300 mm": where something stands along the rail.
std::string say_place(const Scene& scene, double station);

}  // namespace stowpath
