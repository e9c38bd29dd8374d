#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "sim/mechanism/model.h"
#include "sim/rehearsal/recording.h"
#include "sim/trade/length.h"

namespace stowpath {

/// "12.00 s".
std::string time_text(Figure seconds);

/// "caster meets truing bench at 1.25 m/s, 14 J": what happened, without its time.
std::string event_sentence(const RecordedEvent& event, DisplayUnits units);

/// Whether an event is one that a person has to look at: touches, jerks, lost holds. A foot that is set down is none.
bool is_trouble(const RecordedEvent& event);

/// Whether a builder has to look into something of it. An older recording keeps no account: then its events tell.
bool has_trouble(const Recording& recording);

/// Whether one thing that has to be looked at is worse than another: a lost hold than a stroke, a stroke than a roll
/// that does not go; of two of a kind the harder one.
bool graver(const RecordedEvent& a, const RecordedEvent& b);

/// When the way down begins; none where it does not: from then on a frame's move goes backwards [s]
std::optional<double> lowers_away_at(const Recording& recording);

/// Until when a run has to be drawn to show where the stair was: to where it is lowered away, if it then comes down the
/// way that it went up, else to its end [s].
double drawn_until(const Recording& recording);

/// What happened and is worth telling, in order of time.
std::vector<RecordedEvent> told_events(const Recording& recording);

/// The last of these up to a time; none before the first.
std::optional<RecordedEvent> last_told(const Recording& recording, double time);

/// When the last frame was, or the last thing happened, whichever is later [s].
/// @pre the recording has frames
double ends_at(const Recording& recording);

/// Whether the stair was put at another station between a frame and the one before, as it did not get there by itself:
/// it has no speed there.
bool brought_before(const Recording& recording, std::size_t frame);

/// The last frame up to a time, the first before that.
/// @pre the recording has frames
std::size_t frame_at(const Recording& recording, double time);

/// "12.34 s, lift, line 98 N": where a frame stands.
std::string frame_words(const Model& model, const Recording& recording, const RecordedFrame& frame, DisplayUnits units);

/// Of the hoist line's hand over the whole run [N].
double greatest_pull(const Recording& recording);

/// "REHEARSED: the procedure, 41.20 s; 3 touches, greatest pull of the line 210 N. A simulation: it proves no
/// clearance."
std::string recording_answer(const Recording& recording, DisplayUnits units);

/// Step, energy and differences: how good the recorded numbers are.
std::string account_sentences(const Recording& recording, DisplayUnits units);

/// What the world leaves out and what was taken for granted, in sentences; empty where the recording keeps none.
std::string taken_for_granted(const Recording& recording);

/// What a drawing of a recording always says with it.
std::string recording_cautions();

}  // namespace stowpath
