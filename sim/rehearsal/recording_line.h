#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "sim/geometry/vec2.h"

namespace stowpath {

/// One line of a recording's text, taken apart from the left by words that spaces part. Whatever is wrong is thrown as
/// a RecordingError, placed by line and column.
class RecordingLine {
 public:
  /// @param text  without its line end; it and the file's name must outlive this
  RecordingLine(std::string_view text, int number, const std::string& file)
      : text_(text), number_(number), file_(file) {}

  /// The next run of anything but spaces. @param wanted  what it should be, for messages
  std::string_view word(const char* wanted);
  /// A finite number in decimals.
  double number(const char* wanted);
  int whole(const char* wanted, int least, int most);
  Vec2 point(const char* wanted);
  /// Text in double quotes, with \" for a quote, \\ for a backslash and \xHH for a control character.
  std::string quoted(const char* wanted);
  /// Whether the next word is `yes`; it must be that or `no`.
  bool either(const char* yes, const char* no);
  /// Nothing more may stand on the line.
  void end();

  [[noreturn]] void fail(const std::string& problem, const std::string& hint = "") const;
  /// Placed at the word that was read last.
  [[noreturn]] void fail_last(const std::string& problem, const std::string& hint = "") const;

 private:
  void skip_spaces();
  char character();
  [[noreturn]] void fail_at(std::size_t at, const std::string& problem, const std::string& hint) const;

  std::string_view text_;
  int number_;
  const std::string& file_;
  std::size_t at_ = 0, last_ = 0;
};

/// The lines of a text but empty ones and those that begin with #.
class RecordingLines {
 public:
  RecordingLines(std::string_view text, const std::string& file) : rest_(text), file_(file) {}

  /// @throws RecordingError where the text has ended. @param wanted  what is missing then
  RecordingLine next(const char* wanted);
  /// @throws RecordingError where there is another line
  void nothing_more();

 private:
  std::string_view take();

  std::string_view rest_;
  const std::string& file_;
  int number_ = 0;
};

}  // namespace stowpath
