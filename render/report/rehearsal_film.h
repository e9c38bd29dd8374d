#pragma once

#include <string>

#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// One picture of the film: the side view with the stair as it was in a frame, the time, the line's pull and what
/// happened last under it.
/// @param faster  how many times as fast as it was the film plays: printed
DisplayList make_rehearsal_picture(const RecordingSubject& subject, std::size_t frame, int faster);

/// A recorded rehearsal as an animated WebP picture, in real time where it lasts no more than 20 s, else as many times
/// faster as brings it under that, which every picture says.
/// @throws std::invalid_argument as check_rehearsal; std::runtime_error where it cannot be painted
std::string rehearsal_film(const RecordingSubject& subject);

}  // namespace stowpath
