#pragma once

#include "render/sheet/labels.h"
#include "render/sheet/view.h"

namespace stowpath {

/// What of the model the side view must hold: out and up, least and greatest [m].
PaperBox side_extent(const Subject& subject);

/// The out-up plane: room, rail, working pose, ghosts of the moves, main dimensions, and the findings in red pencil.
void draw_side_view(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame);

/// Its lettering, set last so that it stands clear of what has been drawn.
/// @param bounds  where it may stand [mm]
void label_side_view(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame,
                     const PaperBox& bounds);

}  // namespace stowpath
