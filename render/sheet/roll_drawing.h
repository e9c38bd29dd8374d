#pragma once

#include <cstddef>
#include <vector>

#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// Whether the stair goes along its rail in a recording, or a hand tries to roll it: then it is worth seeing from above.
bool has_roll(const Recording& recording);

/// The room from above that has to be seen: its length, and out as far as the stair ever reaches [m].
PaperBox roll_extent(const RecordingSubject& subject);

/// A view from above, back wall on top: the extent over a width of paper, with air round it.
ViewFrame plan_across(const PaperBox& extent, double width, double air);

/// The room from above, and the names of what stands in it.
void draw_roll_room(DisplayList& list, const RecordingSubject& subject, const ViewFrame& frame);
void label_roll_room(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                     const PaperBox& bounds);

/// The stair from above as it stood in a frame, out of line by its yaw about the middle of its hooks.
/// @param ghost  a pencilled outline
void draw_stair_above(DisplayList& list, const RecordingSubject& subject, const ViewFrame& frame,
                      const RecordedFrame& at, bool ghost);

/// Where it was while it rolled: ghosts at about equal distances along the rail, with their times, and the last as it is
/// built.
/// @param last  draw that too
void draw_roll_strip(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                     const PaperBox& bounds, bool last);

}  // namespace stowpath
