#pragma once

#include <optional>
#include <string>

#include "sim/rehearsal/rehearsal.h"
#include "sim/rehearsal/side_world.h"

namespace stowpath {

/// What holds a hoist line that is let go [words for a report]; empty: nothing.
/// @param on_cleat  the crew have made it fast; a cleat that the line is not on holds nothing
std::string holder_of_line(const Scene& scene, bool on_cleat);

/// Where on the stair a level push at a height finds something: on a datum line.
struct PushPoint {
  int section = 0;
  Vec2 at;              ///< in that section's frame [m]
  double height = 0.0;  ///< above the floor; not as asked where nothing of the stair is there [m]
};
PushPoint push_point(const Model& model, const SectionPoses& X_W, double height);

/// Area of a section's face that air meets: its side rails and treads laid flat [m2].
double face_area(const Model& model, int section);

/// Force of air on a section, square to its face, at its centre: 1.2 x half rho v^2 A, by the part of the speed that is
/// square to the face. 1.2 is the drag of a flat plate of middling shape (from memory) [N].
/// @param speed  against the climber's face; negative: from behind [m/s]
Vec2 gust_force(double area, const Pose2& X_W, double speed);

}  // namespace stowpath
