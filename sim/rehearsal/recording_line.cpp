#include "sim/rehearsal/recording_line.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "sim/rehearsal/recording_text.h"
#include "sim/scene/source_text.h"

namespace stowpath {
namespace {

constexpr bool control(unsigned byte) { return byte < 0x20 || byte == 0x7f; }

// The whole of `digits` read as a number, or false.
template <typename Number>
bool reads(std::string_view digits, Number& value) {
  const char* const end = digits.data() + digits.size();
  const auto [stopped, fault] = std::from_chars(digits.data(), end, value);
  return fault == std::errc() && stopped == end;
}

bool counts(std::string_view line) { return !line.empty() && line[0] != '#'; }

}  // namespace

std::string_view RecordingLine::word(const char* wanted) {
  skip_spaces();
  const std::size_t end = std::min(text_.find(' ', at_), text_.size());
  last_ = at_;
  if (end == at_) fail(std::string(wanted) + " is missing here");
  at_ = end;
  return text_.substr(last_, end - last_);
}

double RecordingLine::number(const char* wanted) {
  const std::string_view digits = word(wanted);
  double value = 0.0;
  if (!reads(digits, value) || !std::isfinite(value))
    fail_last(std::string(wanted) + " is no number: \"" + std::string(digits) + "\"");
  return value;
}

int RecordingLine::whole(const char* wanted, int least, int most) {
  const std::string_view digits = word(wanted);
  int value = 0;
  if (!reads(digits, value) || value < least || value > most)
    fail_last(std::string(wanted) + " must be a whole number from " + std::to_string(least) + " to " +
              std::to_string(most));
  return value;
}

Vec2 RecordingLine::point(const char* wanted) {
  const double x = number(wanted);
  return {x, number(wanted)};
}

std::string RecordingLine::quoted(const char* wanted) {
  skip_spaces();
  last_ = at_;
  if (at_ >= text_.size() || text_[at_] != '"') fail(std::string(wanted) + " must stand in double quotes");
  std::string out;
  for (++at_; at_ < text_.size() && text_[at_] != '"';) out += character();
  if (at_ >= text_.size()) fail_last("the quotes of " + std::string(wanted) + " do not close");
  ++at_;
  if (at_ < text_.size() && text_[at_] != ' ') fail("a space belongs after " + std::string(wanted));
  return out;
}

bool RecordingLine::either(const char* yes, const char* no) {
  const std::string_view found = word(yes);
  if (found == yes) return true;
  if (found != no) fail_last("\"" + std::string(found) + "\" must be " + yes + " or " + no);
  return false;
}

void RecordingLine::end() {
  skip_spaces();
  if (at_ < text_.size()) fail("nothing belongs after this");
}

void RecordingLine::fail(const std::string& problem, const std::string& hint) const { fail_at(at_, problem, hint); }

void RecordingLine::fail_last(const std::string& problem, const std::string& hint) const {
  fail_at(last_, problem, hint);
}

void RecordingLine::skip_spaces() { at_ = std::min(text_.find_first_not_of(' ', at_), text_.size()); }

char RecordingLine::character() {
  if (text_[at_] != '\\') return text_[at_++];
  const std::string_view rest = text_.substr(at_ + 1);
  if (!rest.empty() && (rest[0] == '"' || rest[0] == '\\')) {
    at_ += 2;
    return rest[0];
  }
  unsigned byte = 0;
  const char* const digits = rest.data() + 1;
  if (rest.size() < 3 || rest[0] != 'x' || std::from_chars(digits, digits + 2, byte, 16).ptr != digits + 2 ||
      !control(byte))
    fail("a backslash stands before a quote, a backslash, or x and two digits of a control character");
  at_ += 4;
  return static_cast<char>(byte);
}

void RecordingLine::fail_at(std::size_t at, const std::string& problem, const std::string& hint) const {
  throw RecordingError(file_, {{number_, 1 + characters(text_.substr(0, at)), 1}, "", problem, hint});
}

RecordingLine RecordingLines::next(const char* wanted) {
  while (!rest_.empty()) {
    const std::string_view line = take();
    if (counts(line)) return {line, number_, file_};
  }
  throw RecordingError(file_, {{std::max(1, number_), 1, 1},
                               "",
                               "the recording stops here: " + std::string(wanted) + " is missing",
                               "it was cut short: record it again"});
}

void RecordingLines::nothing_more() {
  while (!rest_.empty()) {
    const std::string_view line = take();
    if (counts(line)) RecordingLine(line, number_, file_).fail("nothing belongs after the end");
  }
}

std::string_view RecordingLines::take() {
  const std::size_t end = rest_.find('\n');
  std::string_view line = rest_.substr(0, end);
  rest_ = end == std::string_view::npos ? std::string_view{} : rest_.substr(end + 1);
  ++number_;
  if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
  return line;
}

}  // namespace stowpath
