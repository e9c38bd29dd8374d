#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "sim/rehearsal/recording_line.h"
#include "sim/rehearsal/recording_text.h"
#include "sim/rehearsal/recording_words.h"
#include "sim/scene/source_text.h"
#include "sim/scene/suggest.h"

namespace stowpath {
namespace {

void expect(RecordingLine& line, std::string_view word) {
  if (line.word(std::string(word).c_str()) != word) line.fail_last("the line must begin with " + std::string(word));
}

int read_version(RecordingLine head) {
  if (head.word("stowpath-recording") != kRecordingHead)
    head.fail_last("this is no recording", "the first line of one is \"stowpath-recording 3\"");
  const int version = head.whole("the version", 0, 1'000'000);
  if (version < 1 || version > kRecordingVersion)
    head.fail_last("this version is not known", "record it again with this program, which reads versions 1 to 3");
  head.end();
  return version;
}

// @returns the text's version
int read_head(RecordingLines& lines, Recording& recording) {
  const int version = read_version(lines.next("its first line"));
  const auto setting = [&](const char* word, const auto& read) {
    RecordingLine line = lines.next(word);
    expect(line, word);
    read(line);
    line.end();
  };
  setting("scene", [&](RecordingLine& line) { recording.scene = line.quoted("the scene's name"); });
  setting("options", [&](RecordingLine& line) { recording.options = line.quoted("the options"); });
  setting("step", [&](RecordingLine& line) { recording.step = line.number("the step"); });
  setting("sections",
          [&](RecordingLine& line) { recording.sections = line.whole("the count of sections", 1, kMaxSections); });
  return version;
}

RecordedLine read_line(RecordingLine& line) {
  RecordedLine out;
  out.on = line.either("on", "off");
  out.pull = line.number("a line's pull");
  out.paid = line.number("the rope paid out");
  out.slack = line.number("the slack");
  return out;
}

double time_after(RecordingLine& line, std::optional<double> before) {
  const double time = line.number("the time");
  if (before && time < *before) line.fail_last("time goes back here");
  return time;
}

RecordedFrame read_frame(RecordingLine& line, int version, const Recording& recording) {
  RecordedFrame frame;
  const auto& frames = recording.frames;
  frame.time = time_after(line, frames.empty() ? std::nullopt : std::optional(frames.back().time));
  frame.move = line.whole("the move", -1, 1'000'000);
  frame.station = line.number("the station");
  if (version > 1) {
    frame.yaw = line.number("the yaw");
    frame.push = line.number("the hand's push");
  }
  for (int j = 0; j < recording.sections; ++j) {
    RecordedPose& pose = frame.sections.at(static_cast<std::size_t>(j));
    pose.origin = line.point("a section's place");
    pose.turn = line.number("a section's turn");
  }
  frame.hoist = read_line(line);
  frame.fold = read_line(line);
  frame.hooks_on_pipe = line.either("on-pipe", "off-pipe");
  frame.hook_force = line.point("the pipe's force");
  line.end();
  return frame;
}

// @param what  the word stands for: "event"
template <typename Kind, std::size_t count>
Kind read_kind(RecordingLine& line, const std::string& what,
               const std::array<std::pair<Kind, std::string_view>, count>& table) {
  const std::string word(line.word(("the kind of " + what).c_str()));
  std::vector<std::string_view> words;
  for (const auto& [kind, known] : table) {
    if (known == word) return kind;
    words.push_back(known);
  }
  const auto near = nearest_word(word, words);
  line.fail_last("\"" + word + "\" is no " + what, near ? "did you mean " + std::string(*near) + "?" : "");
}

RecordedEvent read_event(RecordingLine& line, const Recording& recording) {
  RecordedEvent event;
  const auto& events = recording.events;
  event.time = time_after(line, events.empty() ? std::nullopt : std::optional(events.back().time));
  event.kind = read_kind(line, "event", kEventWords);
  event.what = line.quoted("what it was");
  event.other = line.quoted("what it met");
  event.value = line.number("the value");
  event.energy = line.number("the energy");
  line.end();
  return event;
}

Account read_bounds(RecordingLine& line) {
  Account account;
  account.bounds.step = line.number("the step");
  account.bounds.energy_gain = line.number("the energy from nowhere");
  account.bounds.energy_scale = line.number("the energy to lay it beside");
  account.bounds.touch_gap = line.number("the distance of parts that touch");
  line.end();
  return account;
}

std::optional<double> read_optional(RecordingLine& line, const char* wanted) {
  RecordingLine ahead = line;
  if (ahead.word(wanted) != "none") return line.number(wanted);
  line.word(wanted);
  return std::nullopt;
}

void read_half_step(RecordingLine& line, RehearsalBounds& bounds) {
  if (bounds.compared) line.fail_last("half-step stands here twice");
  bounds.compared = true;
  bounds.pull = line.number("the pulls' difference");
  bounds.lean = line.number("the leans' difference");
  bounds.swing = line.number("the swings' difference");
  bounds.push = read_optional(line, "the pushes' difference");
  bounds.speed = read_optional(line, "the speeds' difference");
  line.end();
}

Trouble read_trouble(RecordingLine& line) {
  Trouble trouble;
  trouble.kind = read_kind(line, "trouble", kTroubleWords);
  trouble.what = line.quoted("what it was");
  trouble.other = line.quoted("what it met");
  trouble.value = line.number("the value");
  trouble.also = line.number("the second value");
  line.end();
  return trouble;
}

std::string read_caution(RecordingLine& line) {
  std::string text = line.quoted("the caution");
  line.end();
  return text;
}

// @returns whether the word is one of an account's
bool read_account(RecordingLine& line, std::string_view word, std::optional<Account>& account) {
  if (word != "bounds" && word != "half-step" && word != "trouble" && word != "caution") return false;
  if (account.has_value() == (word == "bounds"))
    line.fail_last(account ? "bounds stand here twice" : "bounds belong before this");
  if (word == "bounds") account = read_bounds(line);
  if (word == "half-step") read_half_step(line, account->bounds);
  if (word == "trouble") account->troubles.push_back(read_trouble(line));
  if (word == "caution") account->cautions.push_back(read_caution(line));
  return true;
}

void read_end(RecordingLine& line, const Recording& recording) {
  const auto count = [&](const char* of, std::size_t found) {
    constexpr int kMost = 1'000'000'000;
    if (static_cast<std::size_t>(line.whole(of, 0, kMost)) != found)
      line.fail_last("there are " + std::to_string(found) + " here: " + of + " differs",
                     "lines were lost: record it again");
  };
  count("the count of frames", recording.frames.size());
  count("the count of events", recording.events.size());
  line.end();
}

void check_text(std::string_view text, const std::string& name) {
  const auto refuse = [&](const char* problem, const char* hint) {
    throw RecordingError(name, {{1, 1, 1}, "", problem, hint});
  };
  if (text.size() > kMostRecordingText) refuse("a recording is at most 256 MiB", "record fewer frames");
  if (!is_utf8(text)) refuse("the text is no UTF-8", "write it with stowpath, and edit it as UTF-8");
}

}  // namespace

RecordingError::RecordingError(const std::string& file_name, Diagnostic diagnostic)
    : std::runtime_error(file_name + ":" + std::to_string(diagnostic.at.line) + ":" +
                         std::to_string(diagnostic.at.column) + ": error: " + diagnostic.problem),
      file(file_name),
      fault(std::move(diagnostic)) {}

Recording read_recording(std::string_view text, const std::string& name) {
  check_text(text, name);
  RecordingLines lines(text, name);
  Recording recording;
  const int version = read_head(lines, recording);
  for (;;) {
    RecordingLine line = lines.next("its end");
    const std::string_view word = line.word("frame, event, bounds or end");
    if (word == "end") {
      read_end(line, recording);
      lines.nothing_more();
      return recording;
    }
    if (word == "frame") {
      recording.frames.push_back(read_frame(line, version, recording));
    } else if (word == "event") {
      recording.events.push_back(read_event(line, recording));
    } else if (version < 3 || !read_account(line, word, recording.account)) {
      line.fail_last("a line begins with frame, event or end" +
                     std::string(version < 3 ? "" : ", or with bounds, half-step, trouble or caution"));
    }
  }
}

}  // namespace stowpath
