#pragma once

#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// The run on one sheet: the side view with the stair as it went, one ghost over the other, and under it the pull of
/// the lines, the foot's speed and the lean of every section against time, events marked; what happened in the notes.
/// @throws std::invalid_argument as check_rehearsal
DisplayList make_rehearsal_sheet(const RecordingSubject& subject);

}  // namespace stowpath
