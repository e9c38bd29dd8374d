#pragma once

#include <optional>
#include <string>

#include "sim/mechanism/model.h"

namespace stowpath {

/// What a pointer turns or shifts when it takes hold of the stair.
enum class GripKind { station, lean, fold };
struct Grip {
  GripKind kind = GripKind::lean;
  int hinge = 0;  ///< for a fold, from 0
};

inline constexpr double kGripReach = 2.0;  ///< round the pointer [mm of paper]

/// The part of the stair nearest to a point of the side view; null where none is within `reach` [m].
const StairPart* nearest_part(const Model& model, const SectionPoses& sections, Vec2 point, double reach);

/// What the stair is held by at a point of the side view: its first section gives the lean, a further one the fold above it.
/// @param reach  how near the point must be to a part [m]
std::optional<Grip> grip_at(const Model& model, const Configuration& pose, Vec2 point, double reach);

/// The pose after the pointer went from one point of the side view to another, within the hinges' limits and a quarter
/// turn and a third either way of plumb.
Configuration pulled(const Scene& scene, const Model& model, const Configuration& pose, const Grip& grip, Vec2 from, Vec2 to);

/// The pose with its lean or a fold turned by so much, within the same limits; a hinge that is not there turns nothing [rad].
Configuration turned_by(const Scene& scene, const Configuration& pose, const Grip& grip, double by);

/// The pose shifted along the rail, within where the rail lets it be [m].
Configuration rolled(const Model& model, const Configuration& pose, double by);

/// "tread of section 2", "bracket arm": what lies under a point of the side view, the stair before the room, small
/// things before large ones; empty where nothing does.
std::string part_at(const Model& model, const Configuration& pose, Vec2 point, double reach);
std::string part_at(const Model& model, const SectionPoses& sections, Vec2 point, double reach);

}  // namespace stowpath
