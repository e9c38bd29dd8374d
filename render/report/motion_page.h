#pragma once

#include <string>
#include <vector>

#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// A heading with what stands under it.
struct PageNote {
  std::string heading, words;
};

/// What a page says with a motion that it shows.
struct MotionWords {
  std::string title, answer;
  std::string list;  ///< over what happened, or the moves
  std::string cautions;
  bool forces = true;             ///< pull and speed are told and plotted: the recording has them
  std::vector<PageNote> notes{};  ///< before the cautions
};

/// A stair in motion as one page for any browser, phones included: the side view with a slider, a list to jump by, and
/// plots where there is something to plot. All in the one file; it asks nothing of a network and allows nothing of one.
/// Without scripts it shows the strip of ghosts and the list. #12.5 in its address starts it there.
/// @throws std::invalid_argument as check_rehearsal
std::string motion_page(const RecordingSubject& subject, const MotionWords& words);

}  // namespace stowpath
