#include "render/sheet/labels.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/geometry/interval.h"

namespace stowpath {
namespace {

Vec2 unit(Vec2 v) {
  const double length = norm(v);
  return length > 0.0 ? (1.0 / length) * v : Vec2{1.0, 0.0};
}

}  // namespace

void Labels::fix(DisplayList& list, Text text) {
  taken_.push_back(text_box(text));
  list.text(std::move(text));
}

void Labels::avoid(std::span<const Vec2> points, bool closed) {
  constexpr double kEvery = 2.0, kHalf = 0.6;  // [mm]
  for (std::size_t i = 0; i + (closed ? 0U : 1U) < points.size(); ++i) {
    const Vec2 a = points[i], b = points[(i + 1) % points.size()];
    const int pieces = std::clamp(static_cast<int>(norm(b - a) / kEvery), 1, 200);
    for (int k = 0; k <= pieces; ++k) {
      const Vec2 at = lerp(a, b, static_cast<double>(k) / pieces);
      avoided_.push_back(grown({at, at}, kHalf));
    }
  }
}

bool Labels::fits(const PaperBox& box, const PaperBox& bounds, bool off_lines) const {
  if (box.least.x < bounds.least.x || box.least.y < bounds.least.y) return false;
  if (box.greatest.x > bounds.greatest.x || box.greatest.y > bounds.greatest.y) return false;
  const auto meets = [&](const PaperBox& other) { return overlap(box, other); };
  if (std::any_of(taken_.begin(), taken_.end(), meets)) return false;
  return !off_lines || std::none_of(avoided_.begin(), avoided_.end(), meets);
}

bool Labels::place(DisplayList& list, Text text, Vec2 at, const PaperBox& bounds, double farthest) {
  const double near = std::min(farthest, 16.0);  // to stand off the lines is worth this far [mm]
  return place(list, text, at, bounds, true, near) || place(list, text, at, bounds, false, farthest);
}

bool Labels::place_inside(DisplayList& list, Text text, const PaperBox& box) {
  constexpr std::array<double, 5> kOffMiddle{0.0, -0.2, 0.2, -0.35, 0.35};  // of the box's size
  const Vec2 middle = lerp(box.least, box.greatest, 0.5), size = box.greatest - box.least;
  text.anchor = Anchor::middle;
  text.halo = true;
  for (const double right : kOffMiddle) {
    for (const double down : kOffMiddle) {
      text.at = middle + Vec2{right * size.x, down * size.y + 0.5 * text.size};
      const PaperBox taken = grown(text_box(text), 0.25 * text.size);
      if (!fits(taken, box, true)) continue;
      taken_.push_back(taken);
      list.text(std::move(text));
      return true;
    }
  }
  return false;
}

bool Labels::place(DisplayList& list, Text& text, Vec2 at, const PaperBox& bounds, bool off_lines, double farthest) {
  constexpr int kDirections = 16;
  constexpr double kNear = 2.0, kStep = 2.5;  // [mm]
  const double margin = 0.25 * text.size;
  for (double away = kNear; away <= farthest; away += kStep) {
    for (int i = 0; i < kDirections; ++i) {
      // 0, 1, -1, 2, -2, ...: to the right first, then ever further round.
      const double angle = (i % 2 == 0 ? -1.0 : 1.0) * ((i + 1) / 2) * (2.0 * std::numbers::pi / kDirections);
      const Vec2 aim{std::cos(angle), -std::sin(angle)};
      text.anchor = aim.x > 0.3 ? Anchor::start : aim.x < -0.3 ? Anchor::end : Anchor::middle;
      text.at = at + away * aim + Vec2{0.0, 0.5 * text.size * (1.0 + aim.y)};
      const PaperBox box = grown(text_box(text), margin);
      if (!fits(box, bounds, off_lines)) continue;
      if (away > kNear + 0.5 * kStep) list.line(at, at + (away - 0.8) * aim, {text.ink, kThin});
      taken_.push_back(box);
      text.halo = true;
      list.text(std::move(text));
      return true;
    }
  }
  return false;
}

void arrowhead(DisplayList& list, Vec2 tip, Vec2 direction, Ink ink) {
  const Vec2 d = unit(direction), n{-d.y, d.x};
  list.path({tip, tip - 2.6 * d + 0.45 * n, tip - 2.6 * d - 0.45 * n}, true, {}, ink);
}

void cross_mark(DisplayList& list, Vec2 centre, double half, const Pen& pen) {
  list.line(centre - Vec2{half, half}, centre + Vec2{half, half}, pen);
  list.line(centre - Vec2{half, -half}, centre + Vec2{half, -half}, pen);
}

void tick_mark(DisplayList& list, Vec2 centre, double half, const Pen& pen) {
  list.path({centre + Vec2{-half, 0.1 * half}, centre + Vec2{-0.3 * half, 0.8 * half}, centre + Vec2{half, -half}},
            false, pen);
}

namespace {

/// A dimension line, its arrows and where its figures may stand.
class DimensionLine {
 public:
  DimensionLine(Vec2 a, Vec2 b, double off, const std::string& figures)
      : a_(a), b_(b), d_(unit(b - a)), off_(off), figures_(figures), width_(letter(figures, kFigures).width) {
    const Vec2 n{d_.y, -d_.x};
    from_ = a + off * n;
    to_ = b + off * n;
    length_ = norm(to_ - from_);
    turn_ = -std::atan2(d_.y, d_.x);
    if (turn_ > 0.5 * std::numbers::pi + 1e-9 || turn_ <= -0.5 * std::numbers::pi + 1e-9) turn_ += std::numbers::pi;
    if (turn_ > std::numbers::pi) turn_ -= 2.0 * std::numbers::pi;
  }

  bool holds_figures() const { return length_ > width_ + 8.0; }
  double length() const { return length_; }
  double beyond() const { return length_ + 0.5 * width_ + 3.5; }

  /// The figures with their middle so far along the line [mm].
  Text figures_at(double along) const {
    const Vec2 drop{std::sin(turn_), std::cos(turn_)};
    return {from_ + along * d_ + (0.5 * kFigures) * drop, figures_, kFigures, Anchor::middle, Ink::line, turn_, true};
  }

  /// Which stretch of it lies within a box [mm along it].
  Interval within(const PaperBox& box) const {
    Interval in{0.0, length_};
    const auto cut = [&in](double at, double rate, double lo, double hi) {
      if (std::abs(rate) < 1e-9) {
        if (at < lo || at > hi) in = {1.0, 0.0};
        return;
      }
      const double s = (lo - at) / rate, t = (hi - at) / rate;
      in = meet(in, {std::min(s, t), std::max(s, t)});
    };
    cut(from_.x, d_.x, box.least.x, box.greatest.x);
    cut(from_.y, d_.y, box.least.y, box.greatest.y);
    return in;
  }

  /// @param along  where the figures stand: the line goes out to them [mm]
  void draw(DisplayList& list, double along) const {
    const Vec2 n{d_.y, -d_.x};
    const double side = off_ < 0.0 ? -1.0 : 1.0;
    const Pen thin{Ink::line, kThin};
    if (std::abs(off_) > 1.5) {
      list.line(a_ + (1.0 * side) * n, from_ + (1.5 * side) * n, thin);
      list.line(b_ + (1.0 * side) * n, to_ + (1.5 * side) * n, thin);
    }
    list.line(from_, to_, thin);
    arrowhead(list, from_, length_ > 6.0 ? -d_ : d_, Ink::line);
    arrowhead(list, to_, length_ > 6.0 ? d_ : -d_, Ink::line);
    if (along > length_) list.line(to_, to_ + 3.0 * d_, thin);
    if (along < 0.0) list.line(from_, from_ - 3.0 * d_, thin);
  }

 private:
  Vec2 a_, b_, d_, from_, to_;
  double off_, length_ = 0.0, turn_ = 0.0;
  std::string figures_;
  double width_;
};

}  // namespace

void dimension(DisplayList& list, Labels& labels, Vec2 a, Vec2 b, double off, const std::string& figures) {
  const DimensionLine line(a, b, off, figures);
  // On the line where it fits, else beyond its end.
  const double along = line.holds_figures() ? 0.5 * line.length() : line.beyond();
  line.draw(list, along);
  labels.fix(list, line.figures_at(along));
}

bool place_dimension(DisplayList& list, Labels& labels, Vec2 a, Vec2 b, double off, const std::string& figures,
                     const PaperBox& bounds) {
  constexpr std::array<double, 7> kAlong{0.5, 0.4, 0.6, 0.28, 0.72, 0.15, 0.85};  // of what is seen of it
  const DimensionLine line(a, b, off, figures);
  const Interval seen = line.within(bounds);
  if (seen.empty()) return false;
  std::vector<double> places;
  if (line.holds_figures()) {
    for (const double share : kAlong) places.push_back(seen.lo + share * seen.length());
  }
  places.insert(places.end(), {line.beyond(), line.length() - line.beyond()});
  for (const double along : places) {
    const Text words = line.figures_at(along);
    if (!labels.free(grown(text_box(words), kHaloMargin * kFigures), bounds)) continue;
    line.draw(list, along);
    labels.fix(list, words);
    return true;
  }
  return false;
}

}  // namespace stowpath
