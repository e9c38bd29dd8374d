#pragma once

#include <string>

#include "render/sheet/view.h"
#include "sim/rehearsal/recording.h"

namespace stowpath {

// The procedure shown move by move, as the window runs it: geometry along its own course, at a pace that the eye follows.
// No forces and no time of real work: what is written says so.

/// The motion as frames, one event where each move begins; nobody's pull is in it.
Recording moves_recording(const Model& model, DisplayUnits units);

/// One picture of the film: the side view with findings and ghosts at a time of the showing, and under it where the
/// procedure stands, what the dry fit found and what the picture is.
DisplayList moves_picture(const Subject& subject, double time, int faster);

/// The moves as an animated WebP picture. @throws std::runtime_error where it cannot be painted
std::string moves_film(const Subject& subject);

/// The moves as a page with a slider and a list of them to jump by.
std::string moves_page(const Subject& subject);

}  // namespace stowpath
