#include "render/sheet/plot.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <stdexcept>

#include "sim/trade/figure.h"

namespace stowpath {
namespace {

constexpr double kRounding = 1e-9;  // a figure at an axis's very end still counts

// 1, 2 or 5 times a power of ten, the least that is not below `rough`.
double round_step(double rough) {
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double times : {1.0, 2.0, 5.0}) {
    if (times * power >= rough * (1.0 - kRounding)) return times * power;
  }
  return 10.0 * power;
}

struct Stretch {
  Vec2 a, b;
};

// The part of a straight line inside the box, by Liang and Barsky's four cuts.
std::optional<Stretch> clipped(Vec2 a, Vec2 b, const PaperBox& box) {
  double from = 0.0, to = 1.0;
  const auto cut = [&](double way, double room) {
    if (way == 0.0) return room >= 0.0;
    const double at = room / way;
    if (way < 0.0) from = std::max(from, at);
    if (way > 0.0) to = std::min(to, at);
    return from <= to;
  };
  const Vec2 d = b - a;
  if (!cut(-d.x, a.x - box.least.x) || !cut(d.x, box.greatest.x - a.x)) return std::nullopt;
  if (!cut(-d.y, a.y - box.least.y) || !cut(d.y, box.greatest.y - a.y)) return std::nullopt;
  return Stretch{lerp(a, b, from), lerp(a, b, to)};
}

void grid_lines(DisplayList& list, Labels& labels, const Plot& plot) {
  const Pen thin{Ink::faint, kThin};
  const auto count = [](const PlotAxis& axis) {
    return static_cast<int>(std::floor((axis.hi - axis.lo) / axis.step + kRounding));
  };
  for (int i = 0; i <= count(plot.x); ++i) {
    const double value = plot.x.lo + i * plot.x.step, at = plot(value, 0.0).x;
    list.line({at, plot.box.least.y}, {at, plot.box.greatest.y}, thin);
    labels.fix(
        list,
        {{at, plot.box.greatest.y + 4.2}, format_decimal(Nominal{value}, plot.x.decimals), kNotes, Anchor::middle});
  }
  for (int i = 0; i <= count(plot.y); ++i) {
    const double value = plot.y.lo + i * plot.y.step, at = plot(0.0, value).y;
    list.line({plot.box.least.x, at}, {plot.box.greatest.x, at}, thin);
    labels.fix(list, {{plot.box.least.x - 1.8, at + 0.5 * kNotes},
                      format_decimal(Nominal{value}, plot.y.decimals),
                      kNotes,
                      Anchor::end});
  }
}

}  // namespace

PlotAxis round_axis(double lo, double hi, int most, std::string title) {
  if (!(lo < hi) || !std::isfinite(lo) || !std::isfinite(hi) || most < 2)
    throw std::invalid_argument("an axis needs a stretch and two figures");
  PlotAxis axis;
  axis.title = std::move(title);
  axis.step = round_step((hi - lo) / most);
  axis.lo = axis.step * std::floor(lo / axis.step + kRounding);
  axis.hi = axis.step * std::ceil(hi / axis.step - kRounding);
  axis.decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(axis.step) - kRounding)), 0, 6);
  return axis;
}

Vec2 Plot::operator()(double right, double up) const {
  const double u = (right - x.lo) / (x.hi - x.lo), v = (up - y.lo) / (y.hi - y.lo);
  return {box.least.x + u * (box.greatest.x - box.least.x), box.greatest.y - v * (box.greatest.y - box.least.y)};
}

void draw_axes(DisplayList& list, Labels& labels, const Plot& plot) {
  grid_lines(list, labels, plot);
  list.box(plot.box.least, plot.box.greatest, Pen{Ink::line, kMedium});
  labels.fix(list, {{0.5 * (plot.box.least.x + plot.box.greatest.x), plot.box.greatest.y + 9.2},
                    plot.x.title,
                    kNotes,
                    Anchor::middle});
  labels.fix(list, {{plot.box.least.x, plot.box.least.y - 2.2}, plot.y.title, kNotes, Anchor::start});
}

void draw_curve(DisplayList& list, const Plot& plot, std::span<const Vec2> values, const Pen& pen) {
  std::vector<Vec2> run;
  const auto flush = [&] {
    list.path(std::move(run), false, pen);
    run.clear();
  };
  for (std::size_t i = 0; i + 1 < values.size(); ++i) {
    const auto part = clipped(plot(values[i].x, values[i].y), plot(values[i + 1].x, values[i + 1].y), plot.box);
    if (!part) continue;
    if (run.empty() || norm(run.back() - part->a) > 1e-6) {
      flush();
      run.push_back(part->a);
    }
    run.push_back(part->b);
  }
  flush();
}

void draw_level(DisplayList& list, Labels& labels, const Plot& plot, double up, const std::string& words,
                const Pen& pen) {
  if (up < plot.y.lo || up > plot.y.hi) return;
  const double at = plot(plot.x.lo, up).y;
  list.line({plot.box.least.x, at}, {plot.box.greatest.x, at}, pen);
  if (words.empty()) return;
  Text text{{plot.box.greatest.x - 1.0, at - 0.9}, words, kNotes, Anchor::end, pen.ink};
  text.halo = true;
  labels.fix(list, std::move(text));
}

void draw_mark(DisplayList& list, Labels& labels, const Plot& plot, Vec2 value, const std::string& words, Ink ink) {
  const Vec2 at = plot(value.x, value.y);
  if (!clipped(at, at, plot.box)) return;
  list.circle(at, 1.1, Pen{ink, kMedium}, Ink::paper);
  if (!words.empty()) labels.place(list, {at, words, kNotes, Anchor::start, ink}, at, grown(plot.box, -1.0));
}

void draw_legend(DisplayList& list, Labels& labels, Vec2 at, std::span<const LegendEntry> entries) {
  constexpr double kStroke = 9.0, kAir = 2.0, kApart = 7.0;  // [mm]
  for (const LegendEntry& entry : entries) {
    list.line({at.x, at.y - 0.4 * kNotes}, {at.x + kStroke, at.y - 0.4 * kNotes}, entry.pen);
    labels.fix(list, {{at.x + kStroke + kAir, at.y}, entry.words, kNotes});
    at.x += kStroke + kAir + text_width(entry.words, kNotes) + kApart;
  }
}

}  // namespace stowpath
