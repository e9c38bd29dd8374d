#include <ostream>

#include "render/command/faults.h"
#include "render/command/recording_file.h"
#include "render/command/rehearse_command.h"
#include "render/report/recording_report.h"
#include "render/report/recording_words.h"

namespace stowpath {
namespace {

std::string report_of(const SceneRequest& request, const RecordingSubject& subject) {
  if (request.voice.json) return recording_json(subject);
  if (request.voice.quiet) return recording_line_text(subject);
  return recording_text(subject, {subject.units, request.voice.colour});
}

}  // namespace

int run_replay(const SceneRequest& request, const RehearsalFiles& files, std::istream& in, std::ostream& out) {
  check_rehearsal_files(request, files);
  if (files.replay == "-" && request.scene == "-")
    throw UsageFault("--replay - and the scene - both read standard input", "name a file for one of them");
  const auto [scene, model, units] = read_job(request, in);
  const Recording recording = read_recording_file(files.replay, model, in);
  const RecordingSubject subject{scene, model, recording, units};
  if (!files.drawing.empty()) write_drawing(files.drawing, subject);
  out << report_of(request, subject);
  return has_trouble(recording) ? kExitFails : kExitClear;
}

}  // namespace stowpath
