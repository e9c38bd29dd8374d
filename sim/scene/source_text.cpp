#include "sim/scene/source_text.h"

#include <algorithm>
#include <optional>
#include <string>

namespace stowpath {
namespace {

constexpr std::size_t kLargestFile = std::size_t{1} << 20;  // bytes
constexpr std::size_t kBlock = 1024;                        // bytes
constexpr std::size_t kNone = std::string_view::npos;

bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

// Length of the UTF-8 character at `at`, or 0 where the bytes are none: overlong, surrogate, too large, cut short.
// Source: Unicode 15, table 3-7, well-formed UTF-8 byte sequences.
std::size_t utf8_length(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U; };
  const auto tail = [&](std::size_t i, unsigned low = 0x80U, unsigned high = 0xBFU) {
    return byte(i) >= low && byte(i) <= high;
  };
  const unsigned first = byte(0);
  if (first < 0x80U) return 1;
  if (first >= 0xC2U && first <= 0xDFU) return tail(1) ? 2 : 0;
  if (first >= 0xE0U && first <= 0xEFU) {
    return tail(1, first == 0xE0U ? 0xA0U : 0x80U, first == 0xEDU ? 0x9FU : 0xBFU) && tail(2) ? 3 : 0;
  }
  if (first >= 0xF0U && first <= 0xF4U) {
    return tail(1, first == 0xF0U ? 0x90U : 0x80U, first == 0xF4U ? 0x8FU : 0xBFU) && tail(2) && tail(3) ? 4 : 0;
  }
  return 0;
}

bool is_control(char c) { return (c >= 0 && c < ' ' && c != '\n' && c != '\t') || c == '\x7F'; }

Diagnostic control_fault(const SourcePos& at, char c) {
  if (c == '\0') return {at, "", "a zero byte stands here: this is not UTF-8 text", "save the file as UTF-8"};
  if (c != '\r') return {at, "", "a control character stands here", "delete it"};
  return {at, "", "a carriage return stands here without a line feed", "save the file with Unix or Windows line ends"};
}

std::optional<Diagnostic> bad_encoding(const SourceText& source) {
  const std::string_view text = source.text();
  if (text.size() > kLargestFile)
    return Diagnostic{{1, 1, 1}, "", "the file is larger than 1 MiB", "leave out the rest"};
  if (text.substr(0, 3) == "\xEF\xBB\xBF") {
    return Diagnostic{
        {1, 1, 1}, "", "the file starts with a byte-order mark", "save it as plain UTF-8, without a mark"};
  }
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = utf8_length(text, at);
    if (length == 0) return Diagnostic{source.place(at), "", "this byte is not UTF-8 text", "save the file as UTF-8"};
    const bool line_end = text[at] == '\r' && at + 1 < text.size() && text[at + 1] == '\n';
    if (is_control(text[at]) && !line_end) return control_fault(source.place(at), text[at]);
    at += length;
  }
  return std::nullopt;
}

// Walks the lines as far as is needed to know where a value starts, for quotes and tabs. What a value means is left to
// the parser proper.
class LineWalk {
 public:
  explicit LineWalk(const SourceText& source) : source_(source) {}

  std::vector<Diagnostic> run() {
    for (number_ = 0; number_ < source_.lines(); ++number_) walk(source_.line(number_));
    if (!open_.empty()) unclosed();
    return std::move(faults_);
  }

 private:
  struct Bracket {
    std::size_t offset;  // in the text
    std::size_t indent;  // of its line
  };

  void walk(std::string_view line) {
    line_ = line;
    at_ = 0;
    value_starts_ = true;
    tab_told_ = false;
    const std::size_t indent = line_.find_first_not_of(' ');
    if (!open_.empty() && goes_on_with_keys(indent)) unclosed();
    while (at_ < line_.size() && !comment_starts()) step();
  }

  // Lines within brackets stand deeper than the line that opened them; one that does not belongs to the next setting.
  bool goes_on_with_keys(std::size_t indent) const {
    return indent != kNone && indent <= open_.front().indent && std::string_view("]}#").find(line_[indent]) == kNone;
  }

  void unclosed() {
    const std::size_t opened = open_.back().offset;
    const bool list = source_.text()[opened] == '[';
    faults_.push_back({source_.place(opened), "", list ? "this [ is not closed" : "this { is not closed",
                       std::string("close it with ") + (list ? "]" : "}") +
                           ", or indent the lines it goes on; note that a # after a space starts a comment"});
    open_.clear();
  }

  bool comment_starts() const {
    return line_[at_] == '#' && (at_ == 0 || line_[at_ - 1] == ' ' || line_[at_ - 1] == '\t');
  }

  bool ends_word(std::size_t at) const { return at >= line_.size() || line_[at] == ' ' || line_[at] == '\t'; }

  void step() {
    const char c = line_[at_];
    if (c == '\t') return tab();
    if (c == ' ') return void(++at_);
    if (flow_bracket(c)) return;
    if (value_starts_) return start_value(c);
    if (c == ':' && (ends_word(at_ + 1) || !open_.empty())) value_starts_ = true;
    ++at_;
  }

  bool flow_bracket(char c) {
    const bool opens = (c == '[' || c == '{') && (value_starts_ || !open_.empty());
    const bool closes = (c == ']' || c == '}') && !open_.empty();
    const bool parts = c == ',' && !open_.empty();
    if (!opens && !closes && !parts) return false;
    if (opens) open_.push_back({source_.line_start(number_) + at_, line_.find_first_not_of(' ')});
    if (closes) open_.pop_back();
    value_starts_ = !closes;
    ++at_;
    return true;
  }

  void start_value(char c) {
    if ((c == '-' || c == '?') && open_.empty() && ends_word(at_ + 1)) return void(++at_);
    value_starts_ = false;
    if (c == '"' || c == '\'') return quoted();
    if ((c == '|' || c == '>') && open_.empty()) {
      fault(1, "text in several lines is not read here", "write the text on one line");
      at_ = line_.size();
      return;
    }
    ++at_;
  }

  void quoted() {
    const std::size_t end = quoted_end(line_, at_);
    if (end == kNone) {
      fault(line_.size() - at_, "this quote is never closed on its line",
            "close it there; inch marks need no quotes: write 9' 4\" or 9 ft 4 in as it is");
      at_ = line_.size();
      return;
    }
    std::size_t next = end;
    while (next < line_.size() && line_[next] == ' ') ++next;
    const bool comment = next < line_.size() && line_[next] == '#' && next > end;
    if (next < line_.size() && !comment && std::string_view(":,]}").find(line_[next]) == kNone) {
      at_ = next;
      fault(line_.size() - next, "something follows the closing quote",
            "inch marks need no quotes: write 9' 4\" or 9 ft 4 in as it is");
      at_ = line_.size();
      return;
    }
    at_ = end;
  }

  void tab() {
    if (!tab_told_) fault(1, "a tab stands here", "indent and part with spaces");
    tab_told_ = true;
    ++at_;
  }

  void fault(std::size_t bytes, const std::string& problem, const std::string& hint) {
    faults_.push_back({source_.place(source_.line_start(number_) + at_, bytes), "", problem, hint});
  }

  const SourceText& source_;
  std::vector<Diagnostic> faults_;
  std::string_view line_;
  std::size_t number_ = 0;
  std::size_t at_ = 0;
  std::vector<Bracket> open_;  // carried from line to line
  bool value_starts_ = true;
  bool tab_told_ = false;
};

}  // namespace

SourceText::SourceText(std::string_view text) : text_(text), starts_{0} {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\n' && i + 1 < text.size()) starts_.push_back(i + 1);
  }
  int count = 0;
  for (std::size_t at = 0; at <= text.size(); at += kBlock) {
    counted_.push_back(count);
    count += characters(text.substr(at, kBlock));
  }
}

int SourceText::characters_before(std::size_t offset) const {
  const std::size_t block = offset / kBlock;
  return counted_[block] + characters(text_.substr(block * kBlock, offset - block * kBlock));
}

std::size_t SourceText::line_start(std::size_t line) const {
  return line < starts_.size() ? starts_[line] : text_.size();
}

std::string_view SourceText::line(std::size_t line) const {
  std::string_view found = text_.substr(line_start(line), line_start(line + 1) - line_start(line));
  while (!found.empty() && (found.back() == '\n' || found.back() == '\r')) found.remove_suffix(1);
  return found;
}

SourcePos SourceText::place(std::size_t offset, std::size_t bytes) const {
  const auto after = std::upper_bound(starts_.begin(), starts_.end(), offset);
  const auto number = static_cast<std::size_t>(after - starts_.begin()) - 1;
  const std::size_t start = starts_[number], end = start + line(number).size();
  const std::size_t from = std::min(offset, end);
  const int column = characters_before(from) - characters_before(start) + 1;
  return {static_cast<int>(number) + 1, column,
          std::max(1, characters(text_.substr(from, std::min(bytes, end - from))))};
}

bool is_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = utf8_length(text, at);
    if (length == 0) return false;
    at += length;
  }
  return true;
}

int characters(std::string_view utf8) {
  return static_cast<int>(std::count_if(utf8.begin(), utf8.end(), [](char c) { return !continues_character(c); }));
}

std::size_t quoted_end(std::string_view text, std::size_t open) {
  const char quote = text[open];
  for (std::size_t i = open + 1; i < text.size() && text[i] != '\n'; ++i) {
    if (quote == '"' && text[i] == '\\') {
      ++i;
    } else if (text[i] == quote) {
      if (quote != '\'' || i + 1 >= text.size() || text[i + 1] != '\'') return i + 1;
      ++i;
    }
  }
  return kNone;
}

std::vector<Diagnostic> check_source_text(const SourceText& source) {
  if (const std::optional<Diagnostic> fault = bad_encoding(source)) return {*fault};
  return LineWalk(source).run();
}

}  // namespace stowpath
