#pragma once

#include <string>

#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// A recorded rehearsal as one page for any browser, phones included: the side view in motion with a slider, a list of
/// what happened to jump to, the plots with a line at the time shown. All in the one file; it asks nothing of a network
/// and allows nothing of one. Without scripts it shows the strip of ghosts and the list. #12.5 in its address starts it
/// there.
/// @throws std::invalid_argument as check_rehearsal
std::string rehearsal_page(const RecordingSubject& subject);

}  // namespace stowpath
