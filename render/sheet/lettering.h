#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "render/sheet/display_list.h"

namespace stowpath {

/// Letters of one size on one baseline.
struct LetterRun {
  std::string words;
  double x = 0.0;      ///< from the line's start [mm]
  double rise = 0.0;   ///< of its baseline above the line's [mm]
  double size = 0.0;   ///< height of a capital [mm]
  double width = 0.0;  ///< [mm]
};

struct Lettering {
  std::vector<LetterRun> runs;
  double width = 0.0;  ///< [mm]
};

/// Height of the type's body for a capital of height 1 (Routed Gothic: 1024 over 736 units).
inline constexpr double kBodyPerCapital = 1024.0 / 736.0;

/// Figures of a stacked fraction are this much smaller, and are stacked only where they stay readable in print.
inline constexpr double kFractionSize = 5.0 / 7.0;
inline constexpr double kSmallestFraction = 2.4;  ///< [mm]

/// How many bytes a letter of UTF-8 takes, by its first one.
constexpr std::size_t letter_bytes(unsigned char lead) {
  return lead < 0x80 ? 1U : lead < 0xE0 ? 2U : lead < 0xF0 ? 3U : 4U;
}

/// Width of a text set in Routed Gothic at this capital height [mm]. Letters the type lacks count as wide ones.
double text_width(std::string_view utf8, double size);

/// Lays out one line as all painters draw it: foot and inch marks become primes, `3/16` a raised and a lowered figure
/// about a fraction slash, where the size allows.
Lettering letter(std::string_view words, double size);

/// Where a line of that width begins, along itself from the place it is set at [mm].
constexpr double line_start(Anchor anchor, double width) {
  return anchor == Anchor::start ? 0.0 : anchor == Anchor::middle ? -0.5 * width : -width;
}

/// How far the paper cleared behind a text goes beyond it, in heights of a capital.
inline constexpr double kHaloMargin = 0.25;

/// Breaks at spaces so that no line is wider than `width` [mm]; a longer word stands alone.
std::vector<std::string> wrap_text(std::string_view words, double size, double width);

/// An upright box on the paper.
struct PaperBox {
  Vec2 least, greatest;  ///< [mm]
};
inline constexpr PaperBox kAllPaper{{-1e6, -1e6}, {1e6, 1e6}};  ///< more than any sheet has
bool overlap(const PaperBox& a, const PaperBox& b);
PaperBox common_box(const PaperBox& a, const PaperBox& b);  ///< turned inside out where they do not meet
PaperBox grown(const PaperBox& box, double by);

/// The box that a text takes, its turn considered.
PaperBox text_box(const Text& text);

}  // namespace stowpath
