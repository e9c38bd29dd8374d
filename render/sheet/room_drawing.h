#pragma once

#include "render/sheet/labels.h"
#include "render/sheet/view.h"

namespace stowpath {

/// Floor, walls, ceiling, loft, rail, brackets, obstacles and keep-clear zones in the side view.
void draw_room_side(DisplayList& list, const Subject& subject, const ViewFrame& frame);

/// The names of what stands in the room, where there is room for them.
void label_room_side(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame,
                     const PaperBox& bounds);

/// Least and greatest corner of an outline [m].
PaperBox extent_of(const RoundedPolygon& outline);

/// Says whether an outline is one of the room's own surfaces, which the views draw as lines.
bool is_shell(PartKind kind);

}  // namespace stowpath
