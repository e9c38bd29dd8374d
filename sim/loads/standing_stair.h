#pragma once

#include <string>
#include <vector>

#include "sim/loads/beam.h"
#include "sim/mechanism/model.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// Where a person can stand on the stair.
struct Standpoint {
  std::string name;  ///< "tread 3", counted from below, or "1.250 m along" on a stair without treads
  int section = 0;
  Vec2 at;             ///< in the section's frame [m]
  double along = 0.0;  ///< on the straight chain, from the pivot [m]
};

/// All that no person's place changes: the standing stair, straight between the pivot and the casters' axle, its joints
/// locked.
struct StandingStair {
  const Scene& scene;
  const Model& model;
  SectionPoses X_W;
  std::vector<double> starts;  ///< of the sections on the straight chain [m]
  double axle_along = 0.0;     ///< of the casters, on the chain [m]
  Vec2 axle;                   ///< in the room [m]
  double sine = 0.0;           ///< of the lean from plumb
  double cosine = 0.0;
  Beam beam;  ///< both side rails, the stair's own mass on it

  Vec2 room(int section, Vec2 at) const { return X_W[static_cast<std::size_t>(section)] * at; }
};

StandingStair stand_still(const Scene& scene, const Model& model, double elasticity);

/// Every tread, or every 50 mm of a stair without treads; lowest first.
std::vector<Standpoint> standpoints(const StandingStair& stair);

/// A weight at a place of the room.
struct Weight {
  int section = 0;
  Vec2 at;             ///< [m]
  double force = 0.0;  ///< [N]
};

/// What the sections weigh, at their centres of mass.
std::vector<Weight> own_weights(const StandingStair& stair);

}  // namespace stowpath
