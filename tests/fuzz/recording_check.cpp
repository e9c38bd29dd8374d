#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include "sim/rehearsal/recording_text.h"
#include "tests/fuzz/checks.h"

namespace stowpath::testing {
namespace {

void require(bool kept, const char* promise) {
  if (!kept) throw std::logic_error(promise);
}

void check_recording(const Recording& recording) {
  require(recording.sections >= 1 && recording.sections <= kMaxSections, "1 to 3 sections");
  require(std::isfinite(recording.step), "a finite step");
  const auto earlier = [](const auto& a, const auto& b) { return a.time < b.time; };
  require(std::is_sorted(recording.frames.begin(), recording.frames.end(), earlier), "frames in order of time");
  require(std::is_sorted(recording.events.begin(), recording.events.end(), earlier), "events in order of time");
  const std::string once = write_recording(recording);
  require(write_recording(read_recording(once, "again")) == once, "what is written reads back the same");
}

void check_fault(const RecordingError& error, std::string_view text) {
  const auto lines = 1 + std::count(text.begin(), text.end(), '\n');
  require(error.fault.at.line >= 1 && error.fault.at.line <= lines, "a fault lies on a line of the text");
  require(error.fault.at.column >= 1 && static_cast<std::size_t>(error.fault.at.column) <= text.size() + 1,
          "a column lies within the text");
  require(!error.fault.problem.empty(), "a fault says its problem");
}

}  // namespace

void check_recording_text(std::string_view text) {
  try {
    check_recording(read_recording(text, "recording"));
  } catch (const RecordingError& error) {
    check_fault(error, text);
  }
}

}  // namespace stowpath::testing
