#include "render/report/page.h"

#include <algorithm>

#include "render/report/wrap.h"

namespace stowpath {

std::string coloured(const std::string& text, std::string_view code, bool colour) {
  return colour ? "\033[" + std::string(code) + "m" + text + "\033[0m" : text;
}

std::string answer_text(std::string_view line, std::string_view word, std::string_view code, bool colour) {
  std::string lines = wrapped(line, kPageWidth, "", "  ");
  return lines.replace(0, word.size(), coloured(std::string(word), code, colour));
}

std::string padded(std::string text, std::size_t width) {
  const std::size_t taken = columns(text);
  if (taken < width) text.append(width - taken, ' ');
  return text;
}

void Table::row(std::vector<std::string> cells) {
  widths_.resize(std::max(widths_.size(), cells.size()), 0);
  for (std::size_t i = 0; i < cells.size(); ++i) widths_[i] = std::max(widths_[i], columns(cells[i]));
  rows_.push_back(std::move(cells));
}

void Table::figures(std::size_t column) {
  right_.resize(std::max(right_.size(), column + 1), false);
  right_[column] = true;
}

std::string Table::text() const {
  std::string out;
  for (const std::vector<std::string>& cells : rows_) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const bool right = i < right_.size() && right_[i];
      const std::string room(right ? widths_[i] - columns(cells[i]) : 0, ' ');
      line += "  " + room + (right ? cells[i] : padded(cells[i], widths_[i]));
    }
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + "\n";
  }
  return out;
}

void ReportPage::heading(const std::string& words) { text_ += "\n" + coloured(words, "1", colour_) + "\n"; }

void ReportPage::paragraph(const std::string& words, const std::string& indent) {
  text_ += wrapped(words, kPageWidth, indent, indent);
}

void ReportPage::section(const std::string& title, const std::string& words) {
  heading(title);
  paragraph(words);
}

void ReportPage::table(const std::string& title, const Table& table) {
  heading(title);
  text_ += table.text();
}

}  // namespace stowpath
