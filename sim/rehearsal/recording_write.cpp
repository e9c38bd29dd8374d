#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

#include "sim/rehearsal/recording_text.h"
#include "sim/rehearsal/recording_words.h"
#include "sim/scene/source_text.h"

namespace stowpath {
namespace {

[[noreturn]] void refuse(const std::string& what) { throw std::invalid_argument("recording: " + what); }

/// Lines of words, numbers and quoted text.
class Writer {
 public:
  Writer& word(std::string_view text) {
    if (!out_.empty() && out_.back() != '\n') out_ += ' ';
    out_ += text;
    return *this;
  }

  // The shortest decimals that read back to the same double.
  Writer& number(double value) {
    if (!std::isfinite(value)) refuse("a number is not finite");
    std::array<char, 32> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value).ptr;
    return word({text.data(), static_cast<std::size_t>(end - text.data())});
  }

  Writer& number(int value) { return word(std::to_string(value)); }
  Writer& optional(std::optional<double> value) { return value ? number(*value) : word("none"); }
  Writer& point(Vec2 at) { return number(at.x).number(at.y); }

  Writer& quoted(const std::string& text) {
    if (!is_utf8(text)) refuse("a text is no UTF-8");
    std::string out = "\"";
    for (const char c : text) out += escaped(c);
    return word(out + "\"");
  }

  Writer& line_end() {
    out_ += '\n';
    return *this;
  }

  std::string text() && { return std::move(out_); }

 private:
  static std::string escaped(char c) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    if (c == '"' || c == '\\') return {'\\', c};
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x20 && byte != 0x7f) return {c};
    return {'\\', 'x', kDigits[byte >> 4], kDigits[byte & 15]};
  }

  std::string out_;
};

void check(const Recording& recording) {
  if (recording.sections < 1 || recording.sections > kMaxSections) refuse("a stair has 1 to 3 sections");
  for (std::size_t i = 1; i < recording.frames.size(); ++i) {
    if (recording.frames[i].time < recording.frames[i - 1].time) refuse("frames go back in time");
  }
  for (std::size_t i = 1; i < recording.events.size(); ++i) {
    if (recording.events[i].time < recording.events[i - 1].time) refuse("events go back in time");
  }
}

void write_head(Writer& out, const Recording& recording) {
  out.word(kRecordingHead).number(kRecordingVersion).line_end();
  out.word("scene").quoted(recording.scene).line_end();
  out.word("options").quoted(recording.options).line_end();
  out.word("step").number(recording.step).line_end();
  out.word("sections").number(recording.sections).line_end();
  out.word(
         "# frame: time, move, station, yaw, push; out, up, turn of each section; hoist line, fold line: on or off, pull, "
         "paid, slack;")
      .line_end();
  out.word(
         "# on-pipe or off-pipe, the pipe's force out and up. event: time, what happened, which, with which, value, "
         "energy.")
      .line_end();
  out.word("# Seconds, metres, radians, newtons, joules; docs/recording.md says the rest.").line_end();
}

void write_line(Writer& out, const RecordedLine& line) {
  out.word(line.on ? "on" : "off").number(line.pull).number(line.paid).number(line.slack);
}

void write_frame(Writer& out, const RecordedFrame& frame, int sections) {
  out.word("frame").number(frame.time).number(frame.move);
  out.number(frame.station).number(frame.yaw).number(frame.push);
  for (int j = 0; j < sections; ++j) {
    const RecordedPose& pose = frame.sections.at(static_cast<std::size_t>(j));
    out.point(pose.origin).number(pose.turn);
  }
  write_line(out, frame.hoist);
  write_line(out, frame.fold);
  out.word(frame.hooks_on_pipe ? "on-pipe" : "off-pipe").point(frame.hook_force).line_end();
}

void write_event(Writer& out, const RecordedEvent& event) {
  out.word("event").number(event.time).word(event_word(event.kind)).quoted(event.what).quoted(event.other);
  out.number(event.value).number(event.energy).line_end();
}

void write_bounds(Writer& out, const RehearsalBounds& bounds) {
  out.word("bounds").number(bounds.step).number(bounds.energy_gain).number(bounds.energy_scale);
  out.number(bounds.touch_gap).line_end();
  if (!bounds.compared) return;
  out.word("half-step").number(bounds.pull).number(bounds.lean).number(bounds.swing);
  out.optional(bounds.push).optional(bounds.speed).line_end();
}

void write_trouble(Writer& out, const Trouble& trouble) {
  out.word("trouble").word(trouble_word(trouble.kind)).quoted(trouble.what).quoted(trouble.other);
  out.number(trouble.value).number(trouble.also).line_end();
}

void write_account(Writer& out, const Account& account) {
  write_bounds(out, account.bounds);
  for (const Trouble& trouble : account.troubles) write_trouble(out, trouble);
  for (const std::string& caution : account.cautions) out.word("caution").quoted(caution).line_end();
}

template <typename Kind, std::size_t count>
std::string_view word_of(const std::array<std::pair<Kind, std::string_view>, count>& words, Kind kind) {
  for (const auto& [known, word] : words) {
    if (known == kind) return word;
  }
  refuse("something is of no kind");
}

}  // namespace

std::string_view event_word(RecordedEventKind kind) {
  return word_of(kEventWords, kind);
}

std::string_view trouble_word(TroubleKind kind) { return word_of(kTroubleWords, kind); }

std::string write_recording(const Recording& recording) {
  check(recording);
  Writer out;
  write_head(out, recording);
  auto event = recording.events.begin();
  for (const RecordedFrame& frame : recording.frames) {
    while (event != recording.events.end() && event->time < frame.time) write_event(out, *event++);
    write_frame(out, frame, recording.sections);
  }
  while (event != recording.events.end()) write_event(out, *event++);
  if (recording.account) write_account(out, *recording.account);
  out.word("end").word(std::to_string(recording.frames.size())).word(std::to_string(recording.events.size()));
  out.line_end();
  return std::move(out).text();
}

}  // namespace stowpath
