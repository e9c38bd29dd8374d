#pragma once

#include <string>

#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// A recorded rehearsal as a page: its motion, what happened to jump to, and pull, speed and lean against time with a
/// line at the time shown.
/// @throws std::invalid_argument as check_rehearsal
std::string rehearsal_page(const RecordingSubject& subject);

}  // namespace stowpath
