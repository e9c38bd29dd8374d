#pragma once

#include <optional>
#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Farthest that a sheave, block or eye hangs from what it is fixed to: an eye with a shackle; judgement [m].
inline constexpr double kHangsWithin = 0.100;

/// Farthest that an eye on the stair stands off the wood that holds it; judgement [m].
inline constexpr double kEyeWithin = 0.060;

/// The id of the one thing of the room that a point is fixed to: the nearest of shell, loft and obstacles, if that is
/// within kHangsWithin.
std::optional<int> holder_of(const Model& model, const RoomPoint& point);

/// The wooden parts of a section that hold an eye at a point of it.
struct WoodAt {
  std::vector<int> ids;
  double depth = 0.0;  ///< how deep in the wood the point lies [m]
};

/// @param at       along, across [m]
/// @param station  from the stair's middle; the eye at the same distance on the other side counts too [m]
WoodAt wood_at(const Model& model, int section, Vec2 at, double station);

}  // namespace stowpath
