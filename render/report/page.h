#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace stowpath {

inline constexpr std::size_t kPageWidth = 100;  ///< columns of a report

/// In a terminal's colour, or as it is.
std::string coloured(const std::string& text, std::string_view code, bool colour);

/// An answer's lines, as wide as a page, ended; its first word in a terminal's colour. @param word  that it begins with
std::string answer_text(std::string_view line, std::string_view word, std::string_view code, bool colour);

/// With spaces up to `width` columns.
std::string padded(std::string text, std::size_t width);

/// A table whose columns are as wide as their widest cell; the last one may run on.
class Table {
 public:
  void row(std::vector<std::string> cells);
  /// Puts a column's cells to the right, as figures stand.
  void figures(std::size_t column);
  std::string text() const;

 private:
  std::vector<std::vector<std::string>> rows_;
  std::vector<std::size_t> widths_;
  std::vector<bool> right_;
};

/// A report as it grows: headings, paragraphs and tables, one under the other.
class ReportPage {
 public:
  explicit ReportPage(bool colour) : colour_(colour) {}

  void heading(const std::string& words);
  void paragraph(const std::string& words, const std::string& indent = "  ");
  void section(const std::string& title, const std::string& words);
  void table(const std::string& title, const Table& table);
  void raw(const std::string& text) { text_ += text; }
  const std::string& text() const { return text_; }
  bool colour() const { return colour_; }

 private:
  bool colour_ = false;
  std::string text_;
};

}  // namespace stowpath
