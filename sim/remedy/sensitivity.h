#pragma once

#include <array>
#include <string>
#include <vector>

#include "sim/clearance/dry_fit.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// What one measurement does to one clearance, to first order.
struct Sensitivity {
  std::string key, words;  ///< as in Measurement
  bool angle = false;
  double more =
      0.0;  ///< gained for each metre or radian that it is larger; NaN where it could not be larger [m/m, m/rad]
  double less = 0.0;  ///< lost for each metre or radian that it is smaller: equal to `more` unless there is a kink

  /// Whether both sides agree, so that one number says it.
  bool smooth() const;
  double rate() const { return 0.5 * (more + less); }
};

/// A pair at its closest, and all measurements that change that clearance.
struct TightPlace {
  PairPlace place;                    ///< `u` at the least clearance, to 1e-9
  std::array<std::string, 2> parts;   ///< of the stair, then of the room or of the section nearer the rail
  std::vector<std::string> findings;  ///< ids of the findings whose worst it is
  std::vector<int> moves;             ///< whose closest it is: which of Model::moves
  Configuration at;
  double clearance = 0.0;       ///< signed [m]
  double needed = 0.0;          ///< the margin [m]
  std::vector<Sensitivity> by;  ///< those that count, the strongest first

  double to_spare() const { return clearance - needed; }
};

/// The tightest places of a dry fit: the worst of every finding and the closest pair of every move, each once.
///
/// Each measurement is made larger and smaller by 10 nm, the scene put together anew, and the same two parts looked at
/// in the same place of the same move. Where the clearance is least along the motion it does not change with the pose,
/// so that this is how the least clearance itself changes; docs/method.md says what holds at kinks.
/// @param model  the scene's own, with the pipe straight
/// @note To first order and for that pair: a change of millimetres may bring another pair or corner closer.
std::vector<TightPlace> tight_places(const Scene& scene, const Model& model, const DryFit& fit);

/// The most that a measurement changes a clearance by when it is off by `length` or by `angle` [m].
double effect(const Sensitivity& by, double length, double angle);

}  // namespace stowpath
