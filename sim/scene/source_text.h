#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "sim/scene/scene.h"
#include "sim/scene/scene_error.h"

namespace stowpath {

/// A scene's text with its lines counted, so that bytes become places a person can find. Keeps a view of the text.
class SourceText {
 public:
  explicit SourceText(std::string_view text);

  std::string_view text() const { return text_; }
  /// Byte where a line starts, counted from 0; the text's end for lines past the last.
  std::size_t line_start(std::size_t line) const;
  /// A line without its line end, counted from 0.
  std::string_view line(std::size_t line) const;
  std::size_t lines() const { return starts_.size(); }
  /// The place of `bytes` bytes from `offset`. Columns and length are characters; the length stops at the line's end.
  SourcePos place(std::size_t offset, std::size_t bytes = 1) const;

 private:
  std::string_view text_;
  int characters_before(std::size_t offset) const;

  std::vector<std::size_t> starts_;
  std::vector<int> counted_;  // characters before every kBlock-th byte: lines may be as long as the file
};

/// Characters (code points) in UTF-8 text.
int characters(std::string_view utf8);

bool is_utf8(std::string_view text);

/// Byte after the quoted value that opens at `open`, or npos where it does not close before the line ends.
std::size_t quoted_end(std::string_view text, std::size_t open);

/// What can be refused before the text is taken apart: size, byte-order mark, bytes that are no UTF-8, control
/// characters, tabs, quotes that do not close on their line, text in several lines. Empty if there is nothing.
std::vector<Diagnostic> check_source_text(const SourceText& source);

}  // namespace stowpath
