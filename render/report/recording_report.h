#pragma once

#include <string>

#include "render/report/text.h"
#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// A recorded rehearsal told again: what was asked, how long it took, what happened when.
std::string recording_text(const RecordingSubject& subject, const TextOptions& options);

/// The answer alone, ended.
std::string recording_line_text(const RecordingSubject& subject);

/// One JSON object, "stowpath.recording/1": what happened, in SI; the frames stay in the recording itself.
std::string recording_json(const RecordingSubject& subject);

}  // namespace stowpath
