#pragma once

#include "sim/rehearsal/recording.h"
#include "sim/rehearsal/roll_push.h"

namespace stowpath {

/// The stair as it stands while it is rolled, at station 0: in its working pose, on hooks and casters, with no line on.
RecordedFrame standing_frame(const Model& model, const SpanStair& stair);

/// What the hand does to a frame.
void add_roll(RecordedFrame& frame, const RollTrip& trip);

/// How a trip ended, by its own clock; none while it is under way. @param push  the hand's greatest [N]
std::optional<RecordedEvent> end_event(const RollTrip& trip, double push);

/// The push of a report run once more at the middle friction, on and on until something ends it, frame by frame.
/// @param frame  between frames [s]
/// @throws std::invalid_argument if it is not positive
Recording record_roll(const Scene& scene, const Model& model, const RollReport& report, double frame = 0.04);

}  // namespace stowpath
