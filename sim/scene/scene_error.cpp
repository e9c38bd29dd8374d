#include "sim/scene/scene_error.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "sim/scene/source_text.h"

namespace stowpath {
namespace {

std::string head_of(const Diagnostic& diagnostic, std::string_view file, const std::string& label) {
  std::string head(file);
  if (diagnostic.at.line > 0) {
    head += ":" + std::to_string(diagnostic.at.line) + ":" + std::to_string(diagnostic.at.column);
  }
  head += ": " + label + " ";
  if (!diagnostic.key.empty()) head += diagnostic.key + ": ";
  return head + diagnostic.problem;
}

// Blanks as wide as the first `count` characters of a line; a tab stays a tab, so that the caret stands right.
std::string blanks(std::string_view line, int count) {
  std::string blank;
  for (const char c : line) {
    if ((static_cast<unsigned char>(c) & 0xC0U) == 0x80U) continue;
    if (static_cast<int>(blank.size()) == count) break;
    blank += c == '\t' ? '\t' : ' ';
  }
  return blank;
}

// Longer lines are not shown: they would fill the screen and hide the message.
constexpr std::size_t kLongestShown = 400;

bool can_show(const SourcePos& at, const SourceText& source) {
  if (at.line < 1 || static_cast<std::size_t>(at.line) > source.lines()) return false;
  const std::string_view line = source.line(static_cast<std::size_t>(at.line - 1));
  const auto printable = [](char c) { return static_cast<unsigned char>(c) >= ' ' || c == '\t'; };
  return !line.empty() && line.size() <= kLongestShown && is_utf8(line) && line.substr(0, 3) != "\xEF\xBB\xBF" &&
         std::all_of(line.begin(), line.end(), printable);
}

std::string quoted_line(const SourcePos& at, const SourceText& source, bool colour) {
  const std::string_view line = source.line(static_cast<std::size_t>(at.line - 1));
  const std::string number = std::to_string(at.line);
  const std::string marker = "^" + std::string(static_cast<std::size_t>(std::max(1, at.length)) - 1, '~');
  return "\n  " + number + " | " + std::string(line) + "\n  " + std::string(number.size(), ' ') + " | " +
         blanks(line, at.column - 1) + (colour ? "\033[31m" + marker + "\033[0m" : marker);
}

std::vector<Diagnostic> in_file_order(std::vector<Diagnostic> all) {
  if (all.empty()) throw std::invalid_argument("a scene error needs a diagnostic");
  // A misspelt key is missing too: the place where it is written helps more.
  const auto place = [](const Diagnostic& d) { return std::tie(d.missing, d.at.line, d.at.column); };
  std::stable_sort(all.begin(), all.end(), [&](const auto& a, const auto& b) { return place(a) < place(b); });
  if (all.size() > kMostDiagnostics) all.resize(kMostDiagnostics);
  return all;
}

}  // namespace

std::string format_diagnostic(const Diagnostic& diagnostic, std::string_view file, std::string_view source,
                              bool colour) {
  std::string text = head_of(diagnostic, file, colour ? "\033[31merror:\033[0m" : "error:");
  const SourceText lines(source);
  if (!source.empty() && can_show(diagnostic.at, lines)) text += quoted_line(diagnostic.at, lines, colour);
  if (diagnostic.hint.empty()) return text;
  const std::size_t indent = diagnostic.at.line > 0 ? std::to_string(diagnostic.at.line).size() + 3 : 3;
  return text + "\n" + std::string(indent, ' ') + "= hint: " + diagnostic.hint;
}

SceneError::SceneError(const std::string& file_name, std::vector<Diagnostic> all)
    : std::runtime_error(head_of(all.empty() ? Diagnostic{} : in_file_order(all).front(), file_name, "error:")),
      file(file_name),
      diagnostics(in_file_order(std::move(all))) {}

}  // namespace stowpath
