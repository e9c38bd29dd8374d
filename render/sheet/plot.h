#pragma once

#include <span>
#include <string>
#include <vector>

#include "render/sheet/labels.h"

namespace stowpath {

/// One axis of a plot, from `lo` to `hi` in the quantity's own unit.
struct PlotAxis {
  double lo = 0.0, hi = 1.0;
  double step = 0.2;  ///< between its figures
  int decimals = 1;   ///< of its figures
  std::string title;
};

/// An axis from about lo to about hi with round figures, at most `most` of them.
/// @throws std::invalid_argument unless lo < hi, both finite, and most is at least 2.
PlotAxis round_axis(double lo, double hi, int most, std::string title);

/// A plot on the paper: x to the right, y up.
struct Plot {
  PaperBox box;  ///< of the plotted area, figures and titles outside it [mm]
  PlotAxis x, y;

  Vec2 operator()(double right, double up) const;  ///< [mm]
};

/// The frame with its grid, figures and titles.
void draw_axes(DisplayList& list, Labels& labels, const Plot& plot);

/// A curve through these values, cut off at the frame.
void draw_curve(DisplayList& list, const Plot& plot, std::span<const Vec2> values, const Pen& pen);

/// A level line across the plot with its words above it at the right end; nothing where it lies outside.
void draw_level(DisplayList& list, Labels& labels, const Plot& plot, double up, const std::string& words,
                const Pen& pen);

/// A mark on a value, with words beside it where there is room.
void draw_mark(DisplayList& list, Labels& labels, const Plot& plot, Vec2 value, const std::string& words, Ink ink);

/// A short stroke of each pen with what it stands for, side by side from `at` on.
struct LegendEntry {
  std::string words;
  Pen pen;
};
void draw_legend(DisplayList& list, Labels& labels, Vec2 at, std::span<const LegendEntry> entries);

}  // namespace stowpath
