#pragma once

#include <iosfwd>
#include <string>

#include "render/sheet/rehearsal_drawing.h"

namespace stowpath {

/// Whether a recording can be drawn under that name, which is asked before any work. @throws UsageFault
void check_drawing_name(const std::string& name);

/// Draws a recording as the name's ending says: a sheet (.svg, .pdf, .png), a page that runs it (.html), or a film
/// (.webp); the file is written whole.
/// @throws UsageFault where there is nothing to draw, FileFault
void write_drawing(const std::string& name, const RecordingSubject& subject);

/// Writes a recording's text whole. @throws FileFault
void write_recording_file(const std::string& name, const Recording& recording);

/// A recording of that scene, from a file or, for "-", from standard input. @throws FileFault, SceneFault with the
/// place in the recording, UsageFault where it is of another scene
Recording read_recording_file(const std::string& name, const Model& model, std::istream& in);

}  // namespace stowpath
