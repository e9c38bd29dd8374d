#pragma once

#include <string>
#include <vector>

#include "render/sheet/view.h"

namespace stowpath {

/// One dimension line of a drawing, as `dimension` takes it.
struct Dimension {
  Vec2 a, b;         ///< [mm]
  double off = 0.0;  ///< to the left from a to b [mm]
  std::string figures;
};

/// Heights of deck, rail and ceiling over the floor, left of the back wall.
std::vector<Dimension> room_heights(const Subject& subject, const ViewFrame& frame);

/// Out from the back wall to the rail, under the floor.
Dimension rail_out(const Subject& subject, const ViewFrame& frame);

/// Out from the back wall to the foot at a pose, under the floor.
Dimension foot_out(const Subject& subject, const ViewFrame& frame, const Configuration& at);

/// The loft's edge from the back wall, on its deck.
Dimension loft_out(const Subject& subject, const ViewFrame& frame);

/// The sections' lengths beside them at a pose, on the climber's side.
std::vector<Dimension> section_lengths(const Subject& subject, const ViewFrame& frame, const Configuration& at);

/// How far from a pivot its angle is drawn [mm].
double angle_radius(const Model& model, const ViewFrame& frame);

/// A section's lean from plumb: the plumb line, and the arc to it.
void draw_lean(DisplayList& list, const Model& model, const ViewFrame& frame, double lean);

/// Where its figures belong.
Vec2 lean_mark(const Model& model, const ViewFrame& frame, double lean);

}  // namespace stowpath
