#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

#include "sim/rehearsal/recording.h"
#include "sim/scene/scene_error.h"

namespace stowpath {

// A recording as text, to be kept, compared and drawn again: docs/recording.md says what stands in it. What is written
// reads back to the last bit.

/// The version that is written. All from 1 on are read: what a version did not say yet is 0, or none.
inline constexpr int kRecordingVersion = 3;

/// More is refused before anything is read.
inline constexpr std::size_t kMostRecordingText = 256u << 20;

/// @throws std::invalid_argument where a number is not finite, a text is no UTF-8, times fall, or there are not 1 to 3
///         sections: what could not be read back.
std::string write_recording(const Recording& recording);

/// One thing wrong with a recording's text, and where.
class RecordingError : public std::runtime_error {
 public:
  RecordingError(const std::string& file_name, Diagnostic diagnostic);

  std::string file;
  Diagnostic fault;
};

/// @param name  of the file, for messages
/// @throws RecordingError at the first thing that is wrong
Recording read_recording(std::string_view text, const std::string& name);

/// "touch", "let-go": how the text names what happened.
std::string_view event_word(RecordedEventKind kind);

/// "touches", "hooks-off": how it names what a builder has to look into.
std::string_view trouble_word(TroubleKind kind);

}  // namespace stowpath
