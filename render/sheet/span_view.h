#pragma once

#include <optional>
#include <vector>

#include "render/sheet/labels.h"
#include "render/sheet/view.h"

namespace stowpath {

/// How far out from the back wall the span view must show: what the stair reaches in any pose of its procedure [m].
double span_depth(const Subject& subject);

/// The room from above without a stair: walls, loft, rail and brackets, obstacles, keep-clear zones.
void draw_span_room(DisplayList& list, const Subject& subject, const ViewFrame& frame, double depth);

/// The names of what stands in it.
void label_span_room(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame, double depth,
                     const PaperBox& bounds);

/// The room from above, back wall on top, stations to the right, out downward: loft, rail, what stands in the way, the
/// stair at a pose and the parked pose as a ghost.
/// @param frame   flipped: second axis is out
/// @param bounds  where its lettering may stand [mm]
void draw_span_view(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame, double depth,
                    const Configuration& at, const PaperBox& bounds);

}  // namespace stowpath
