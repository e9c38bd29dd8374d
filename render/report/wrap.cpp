#include "render/report/wrap.h"

#include <algorithm>
#include <cctype>

namespace stowpath {
namespace {

bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

bool word_at(std::string_view text, std::size_t i, std::string_view word) {
  if (text.substr(i, word.size()) != word) return false;
  const std::size_t end = i + word.size();
  return end == text.size() || std::isalnum(static_cast<unsigned char>(text[end])) == 0;
}

// What belongs to the figure before it: "1/2" or a unit.
bool goes_with_figure(std::string_view text, std::size_t i) {
  if (word_at(text, i, "mm") || word_at(text, i, "m") || word_at(text, i, "in") || word_at(text, i, "%")) return true;
  std::size_t end = i;
  while (end < text.size() && is_digit(text[end])) ++end;
  return end > i && end < text.size() && text[end] == '/';
}

}  // namespace

std::size_t next_break(std::string_view text, std::size_t start) {
  for (std::size_t space = text.find(' ', start); space != std::string_view::npos; space = text.find(' ', space + 1)) {
    if (space == start || !is_digit(text[space - 1]) || !goes_with_figure(text, space + 1)) return space;
  }
  return text.size();
}

std::size_t columns(std::string_view utf8) {
  return static_cast<std::size_t>(
      std::count_if(utf8.begin(), utf8.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string wrapped(std::string_view text, std::size_t width, std::string_view first, std::string_view rest) {
  std::string out, line(first);
  bool fresh = true;
  for (std::size_t start = 0; start <= text.size();) {
    const std::size_t end = next_break(text, start);
    const std::string_view word = text.substr(start, end - start);
    if (!fresh && columns(line) + 1 + columns(word) > width) {
      out += line + "\n";
      line = rest;
      fresh = true;
    }
    if (!fresh) line += ' ';
    line += word;
    fresh = false;
    start = end + 1;
  }
  return out + line + "\n";
}

}  // namespace stowpath
