#include "render/command/recording_file.h"

#include <array>
#include <istream>

#include "render/command/faults.h"
#include "render/command/files.h"
#include "render/command/scene_source.h"
#include "render/command/sheet_file.h"
#include "render/report/rehearsal_film.h"
#include "render/report/rehearsal_page.h"
#include "render/sheet/rehearsal_sheet.h"
#include "sim/rehearsal/recording_text.h"

namespace stowpath {
namespace {

constexpr std::array<const char*, 5> kEndings{".svg", ".pdf", ".png", ".html", ".webp"};

Recording parsed(const std::string& text, const std::string& name) {
  try {
    return read_recording(text, name);
  } catch (const RecordingError& error) {
    throw SceneFault(SceneError(error.file, {error.fault}), text);
  }
}

}  // namespace

void check_drawing_name(const std::string& name) {
  for (const char* end : kEndings) {
    if (ends_with(name, end)) return;
  }
  throw UsageFault("-o " + name + ": a rehearsal is drawn as .svg, .pdf, .png, .html or .webp",
                   "give it a name that ends so, as in -o run.html");
}

void write_drawing(const std::string& name, const RecordingSubject& subject) {
  if (subject.recording.frames.empty())
    throw UsageFault("-o " + name + ": nothing was recorded to draw", "the report says why");
  if (ends_with(name, ".html")) return write_whole(name, rehearsal_page(subject));
  if (ends_with(name, ".webp")) return write_whole(name, rehearsal_film(subject));
  write_sheet(name, make_rehearsal_sheet(subject));
}

void write_recording_file(const std::string& name, const Recording& recording) {
  write_whole(name, write_recording(recording));
}

Recording read_recording_file(const std::string& name, const Model& model, std::istream& in) {
  const std::string called = name == "-" ? "standard input" : name;
  Recording recording = parsed(read_text(name, in, kMostRecordingText), called);
  if (recording.scene != model.name || recording.sections != model.linkage.sections)
    throw UsageFault(called + " is a recording of another scene, \"" + recording.scene + "\"",
                     "replay it with the scene that it was recorded with");
  return recording;
}

}  // namespace stowpath
