#include "render/sheet/lettering.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "render/report/wrap.h"

namespace stowpath {
namespace {

constexpr double kUnitsPerCapital = 736.0;

// Advance widths of Routed Gothic Regular 1.0.0 from space to tilde, read from the font's hmtx table.
constexpr std::array<short, 95> kAdvance{288, 288, 384, 672, 504, 864, 784, 224, 344, 344, 512, 640, 296, 416, 288, 576,
                                         672, 352, 672, 672, 672, 672, 672, 672, 672, 672, 288, 296, 640, 640, 640, 640,
                                         880, 688, 696, 684, 696, 696, 664, 672, 712, 336, 544, 672, 656, 830, 720, 736,
                                         680, 736, 704, 672, 688, 712, 688, 872, 632, 656, 632, 312, 576, 312, 512, 576,
                                         384, 588, 588, 528, 592, 544, 376, 588, 584, 288, 288, 528, 288, 864, 580, 568,
                                         588, 588, 424, 496, 344, 580, 496, 696, 496, 496, 504, 432, 288, 432, 648};
constexpr double kOtherAdvance = 700.0;

struct WideLetter {
  std::string_view utf8;
  double advance;
};
constexpr std::array<WideLetter, 10> kWideLetters{{{"°", 480},
                                                   {"±", 640},
                                                   {"×", 640},
                                                   {"–", 512},
                                                   {"′", 256},
                                                   {"″", 416},
                                                   {"−", 640},
                                                   {"·", 288},
                                                   {"½", 624},
                                                   {"’", 296}}};

double units(std::string_view utf8) {
  if (utf8.size() == 1) {
    const int index = static_cast<unsigned char>(utf8[0]) - 32;
    return index >= 0 && index < 95 ? kAdvance[static_cast<std::size_t>(index)] : kOtherAdvance;
  }
  const auto* found = std::find_if(kWideLetters.begin(), kWideLetters.end(),
                                   [utf8](const WideLetter& wide) { return wide.utf8 == utf8; });
  return found == kWideLetters.end() ? kOtherAdvance : found->advance;
}

bool digit_at(std::string_view text, std::size_t i) {
  return i < text.size() && std::isdigit(static_cast<unsigned char>(text[i])) != 0;
}

std::size_t digits_from(std::string_view text, std::size_t i) {
  std::size_t end = i;
  while (digit_at(text, end)) ++end;
  return end - i;
}

// The length of `3/16` at i, 0 where there is none; the slash's place in `slash`.
std::size_t fraction_at(std::string_view text, std::size_t i, std::size_t& slash) {
  if (i > 0 && (digit_at(text, i - 1) || text[i - 1] == '/' || text[i - 1] == '.')) return 0;
  const std::size_t above = digits_from(text, i);
  if (above == 0 || i + above >= text.size() || text[i + above] != '/') return 0;
  slash = i + above;
  const std::size_t below = digits_from(text, slash + 1);
  return below == 0 ? 0 : above + 1 + below;
}

// Marks after a figure are feet and inches; elsewhere they are an apostrophe and a quotation mark.
std::string with_primes(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool after_figure = i > 0 && digit_at(text, i - 1);
    if (after_figure && text[i] == '\'') {
      out += "′";
    } else if (after_figure && text[i] == '"') {
      out += "″";
    } else {
      out += text[i];
    }
  }
  return out;
}

class Setter {
 public:
  explicit Setter(double size) : size_(size) {}

  void run(std::string words, double rise, double size) {
    if (words.empty()) return;
    const double width = text_width(words, size);
    line_.runs.push_back({std::move(words), line_.width, rise, size, width});
    line_.width += width;
  }

  // The slash has no width of its own in this type: it is given a gap between the figures.
  void fraction(std::string_view above, std::string_view below) {
    const double small = kFractionSize * size_, half_slash = 0.28 * small;
    if (!line_.runs.empty()) line_.width += 0.12 * size_;
    run(std::string(above), size_ - 0.72 * small, small);
    line_.width += half_slash;
    line_.runs.push_back({"⁄", line_.width, 0.1 * size_, small, 0.0});
    line_.width += half_slash;
    run(std::string(below), -0.28 * small, small);
  }

  Lettering line_;

 private:
  double size_;
};

}  // namespace

double text_width(std::string_view utf8, double size) {
  double sum = 0.0;
  for (std::size_t i = 0; i < utf8.size();) {
    const std::size_t bytes = letter_bytes(static_cast<unsigned char>(utf8[i]));
    sum += units(utf8.substr(i, bytes));
    i += bytes;
  }
  return sum / kUnitsPerCapital * size;
}

Lettering letter(std::string_view words, double size) {
  Setter set(size);
  const std::string text = with_primes(words);
  const bool stacked = kFractionSize * size >= kSmallestFraction;
  std::size_t start = 0;
  for (std::size_t i = 0; stacked && i < text.size(); ++i) {
    std::size_t slash = 0;
    const std::size_t length = fraction_at(text, i, slash);
    if (length == 0) continue;
    const bool mixed = i > start && text[i - 1] == ' ' && i > 1 && digit_at(text, i - 2);
    set.run(text.substr(start, i - start - (mixed ? 1U : 0U)), 0.0, size);
    set.fraction(std::string_view(text).substr(i, slash - i),
                 std::string_view(text).substr(slash + 1, i + length - slash - 1));
    start = i + length;
    i = start - 1;
  }
  set.run(text.substr(start), 0.0, size);
  return set.line_;
}

std::vector<std::string> wrap_text(std::string_view words, double size, double width) {
  std::vector<std::string> lines;
  std::string line;
  for (std::size_t start = 0; start <= words.size();) {
    const std::size_t end = next_break(words, start);
    const std::string word(words.substr(start, end - start));
    const std::string longer = line.empty() ? word : line + " " + word;
    if (!line.empty() && letter(longer, size).width > width) {
      lines.push_back(line);
      line = word;
    } else {
      line = longer;
    }
    start = end + 1;
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

bool overlap(const PaperBox& a, const PaperBox& b) {
  return a.least.x < b.greatest.x && b.least.x < a.greatest.x && a.least.y < b.greatest.y && b.least.y < a.greatest.y;
}

PaperBox common_box(const PaperBox& a, const PaperBox& b) {
  return {{std::max(a.least.x, b.least.x), std::max(a.least.y, b.least.y)},
          {std::min(a.greatest.x, b.greatest.x), std::min(a.greatest.y, b.greatest.y)}};
}

PaperBox grown(const PaperBox& box, double by) { return {box.least - Vec2{by, by}, box.greatest + Vec2{by, by}}; }

PaperBox text_box(const Text& text) {
  const double width = letter(text.words, text.size).width;
  const double start = line_start(text.anchor, width);
  const double c = std::cos(text.turn), s = std::sin(text.turn);
  PaperBox box{{1e9, 1e9}, {-1e9, -1e9}};
  for (const double x : {start, start + width}) {
    for (const double up : {-0.3 * text.size, text.size}) {  // descenders reach 0.3 of a capital below the baseline
      const Vec2 corner{text.at.x + c * x - s * up, text.at.y - s * x - c * up};
      box.least = {std::min(box.least.x, corner.x), std::min(box.least.y, corner.y)};
      box.greatest = {std::max(box.greatest.x, corner.x), std::max(box.greatest.y, corner.y)};
    }
  }
  return box;
}

}  // namespace stowpath
