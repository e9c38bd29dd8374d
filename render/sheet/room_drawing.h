#pragma once

#include <string>
#include <vector>

#include "render/sheet/labels.h"
#include "render/sheet/view.h"

namespace stowpath {

/// Floor, walls, ceiling, loft, rail, brackets, obstacles and keep-clear zones in the side view.
void draw_room_side(DisplayList& list, const Subject& subject, const ViewFrame& frame);

/// A thing to be named in or beside the paper it takes.
struct NamedSpot {
  std::string name;
  PaperBox box;  ///< [mm]
};

/// Names of things, those that are numbered alike once with their count; left out where there is no room for them.
void label_things(DisplayList& list, Labels& labels, const std::vector<NamedSpot>& spots, const PaperBox& bounds);

/// The names of what stands in the room, inside the side view.
/// @param window  the part of the paper that is seen; a name stands in what of its thing is [mm]
void label_room_side(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame,
                     const PaperBox& window = kAllPaper);

/// Least and greatest corner of an outline [m].
PaperBox extent_of(const RoundedPolygon& outline);

/// Says whether an outline is one of the room's own surfaces, which the views draw as lines.
bool is_shell(PartKind kind);

}  // namespace stowpath
