#include "render/sheet/labels.h"

#include <algorithm>
#include <array>
#include <cmath>

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

void dimension(DisplayList& list, Labels& labels, Vec2 a, Vec2 b, double off, const std::string& figures) {
  const Vec2 d = unit(b - a), n{d.y, -d.x};
  const Vec2 from = a + off * n, to = b + off * n;
  const double side = off < 0.0 ? -1.0 : 1.0;
  const Pen thin{Ink::line, kThin};
  if (std::abs(off) > 1.5) {
    list.line(a + (1.0 * side) * n, from + (1.5 * side) * n, thin);
    list.line(b + (1.0 * side) * n, to + (1.5 * side) * n, thin);
  }
  list.line(from, to, thin);
  const double length = norm(to - from), width = letter(figures, kFigures).width;
  const bool inside = length > width + 8.0;
  arrowhead(list, from, length > 6.0 ? -d : d, Ink::line);
  arrowhead(list, to, length > 6.0 ? d : -d, Ink::line);
  double turn = -std::atan2(d.y, d.x);
  if (turn > 0.5 * std::numbers::pi + 1e-9 || turn <= -0.5 * std::numbers::pi + 1e-9) turn += std::numbers::pi;
  if (turn > std::numbers::pi) turn -= 2.0 * std::numbers::pi;
  // On the line where it fits, else beyond its end.
  const Vec2 middle = inside ? lerp(from, to, 0.5) : to + (0.5 * width + 3.5) * d;
  const Vec2 drop{std::sin(turn), std::cos(turn)};
  if (!inside) list.line(to, to + 3.0 * d, thin);
  labels.fix(list, {middle + (0.5 * kFigures) * drop, figures, kFigures, Anchor::middle, Ink::line, turn, true});
}

}  // namespace stowpath
