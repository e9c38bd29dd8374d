#pragma once

#include <optional>
#include <string>

#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// Where on the hooks' bend the pipe bears at one instant of a rehearsal.
struct SeatSight {
  double at = 0.0;          ///< angle on the bend: 0 at the shank, 90 degrees at the crown, growing to the curl [rad]
  double arc_left = 0.0;    ///< covered beyond that, towards the curl's end; negative past it [rad]
  bool curl_holds = false;  ///< the pipe presses the hooks down: only their curl holds them
};

/// From the pipe's force and the stair's lean; none where the hooks are off the pipe or all but weightless on it.
std::optional<SeatSight> seat_sight(const Scene& scene, const RecordedFrame& frame);

/// "bears at 83°, arc left 112°"; what else there is to say where the pipe does not bear on the hooks.
std::string seat_words(const RecordingSubject& subject, const RecordedFrame& frame);

/// Hooks on their pipe as they are at that instant, enlarged, the place where it bears and its force.
void draw_seat_dial(DisplayList& list, Labels& labels, const RecordingSubject& subject, const RecordedFrame& frame,
                    const PaperBox& box);

}  // namespace stowpath
