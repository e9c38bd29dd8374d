#include "render/sheet/rope_drawing.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "render/report/hoist_words.h"

namespace stowpath {
namespace {

constexpr double kApart = 0.9;   // parts of line between the same two points [mm]
constexpr double kWidest = 1.0;  // stroke of the hardest pull [mm]
constexpr double kSheave = 1.1;  // radius of its circle [mm]
constexpr double kSame = 0.3;    // points nearer than this are one on the paper [mm]
constexpr double kArrow = 7.0;   // at the hand [mm]
constexpr int kSagPieces = 16;

bool same(Vec2 a, Vec2 b) { return norm(a - b) < kSame; }

struct Run {
  Vec2 a, b;              // [mm]
  bool to_stair = false;  // one end on the stair
};

Vec2 place(const RopePoint& point, const SectionPoses& sections) {
  return point.section < 0 ? point.at : sections.at(static_cast<std::size_t>(point.section)) * point.at;
}

std::vector<Run> runs_of(const ViewFrame& frame, const RopeSight& rope) {
  std::vector<Run> runs;
  const auto& points = rope.rigging.points;
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    runs.push_back({frame(place(points[i], rope.sections)), frame(place(points[i + 1], rope.sections)),
                    points[i].section >= 0 || points[i + 1].section >= 0});
  return runs;
}

// Those between the same two points are laid side by side, as they are rove.
void spread(std::vector<Run>& runs) {
  const std::vector<Run> straight = runs;
  const auto beside = [&](std::size_t i, std::size_t j) {
    return (same(straight[i].a, straight[j].a) && same(straight[i].b, straight[j].b)) ||
           (same(straight[i].a, straight[j].b) && same(straight[i].b, straight[j].a));
  };
  for (std::size_t i = 0; i < runs.size(); ++i) {
    int count = 0, before = 0;
    std::size_t first = i;
    for (std::size_t j = 0; j < runs.size(); ++j) {
      if (!beside(i, j)) continue;
      if (count++ == 0) first = j;
      if (j < i) ++before;
    }
    const Vec2 way = straight[first].b - straight[first].a;
    if (count < 2 || norm(way) < kSame) continue;
    const Vec2 off = (kApart * (before - 0.5 * (count - 1)) / norm(way)) * Vec2{-way.y, way.x};
    runs[i].a = runs[i].a + off;
    runs[i].b = runs[i].b + off;
  }
}

std::size_t longest(const std::vector<Run>& runs) {
  const auto shorter = [](const Run& a, const Run& b) { return norm(a.b - a.a) < norm(b.b - b.a); };
  return static_cast<std::size_t>(std::max_element(runs.begin(), runs.end(), shorter) - runs.begin());
}

// A parabola that is longer than its chord by the excess, on the chord's lower side: 8 sag^2 = 3 chord excess where it
// is flat.
std::vector<Vec2> sagging(const Run& run, double excess) {
  const Vec2 way = run.b - run.a;
  const double chord = norm(way), sag = std::sqrt(0.375 * chord * excess);
  const Vec2 down = ((way.x < 0.0 ? -1.0 : 1.0) / std::max(chord, kSame)) * Vec2{-way.y, way.x};
  std::vector<Vec2> points;
  for (int i = 0; i <= kSagPieces; ++i) {
    const double u = static_cast<double>(i) / kSagPieces;
    points.push_back(lerp(run.a, run.b, u) + (4.0 * sag * u * (1.0 - u)) * down);
  }
  return points;
}

bool slack(const RecordedLine& now) { return now.on && !(now.pull > 0.0); }

bool too_much(const RopeSight& rope) { return rope.strongest > 0.0 && rope.now.pull > rope.strongest; }

Pen pen_of(const RopeSight& rope) {
  if (!rope.now.on) return {Ink::soft, kThin, Dash::hidden};
  if (slack(rope.now)) return {Ink::blue, kMedium, Dash::hidden};
  const double share = rope.strongest > 0.0 ? std::clamp(rope.now.pull / rope.strongest, 0.0, 1.0) : 0.5;
  return {too_much(rope) ? Ink::red : Ink::line, kThin + share * (kWidest - kThin)};
}

}  // namespace

void draw_rope(DisplayList& list, Labels& labels, const ViewFrame& frame, const RopeSight& rope) {
  std::vector<Run> runs = runs_of(frame, rope);
  if (runs.empty()) return;
  spread(runs);
  const Pen pen = pen_of(rope);
  const std::size_t hanging = longest(runs);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (!rope.now.on && runs[i].to_stair) continue;
    const bool sags = slack(rope.now) && i == hanging;
    std::vector<Vec2> line{runs[i].a, runs[i].b};
    if (sags) line = sagging(runs[i], frame.scale.paper(rope.now.slack));
    labels.avoid(line, false);
    list.path(std::move(line), false, pen);
  }
  for (const RopePoint& point : rope.rigging.points) {
    if (point.sheave && (rope.now.on || point.section < 0))
      list.circle(frame(place(point, rope.sections)), kSheave, Pen{Ink::line, kThin}, Ink::paper);
  }
}

std::string rope_words(const RecordedLine& now, DisplayUnits units) {
  if (!now.on) return "";
  return slack(now) ? "slack " + format_small_length(AtMost{now.slack}, units) : force_text(AtMost{now.pull}, units);
}

void label_rope(DisplayList& list, Labels& labels, const ViewFrame& frame, const RopeSight& rope,
                const std::string& name, double size, DisplayUnits units, const PaperBox& bounds) {
  const auto& points = rope.rigging.points;
  if (!rope.now.on || points.size() < 2) return;
  const Vec2 hand = frame(place(points.back(), rope.sections));
  const Vec2 run = frame(place(points[points.size() - 2], rope.sections)) - hand;
  const Vec2 pulls = norm(run) > kSame ? (-kArrow / norm(run)) * run : Vec2{0.0, kArrow};
  const Ink ink = too_much(rope) ? Ink::red : Ink::line;
  if (!slack(rope.now)) {
    list.line(hand, hand + pulls, {ink, kMedium});
    arrowhead(list, hand + pulls, pulls, ink);
  }
  const std::string words = (name.empty() ? "" : name + " ") + rope_words(rope.now, units) +
                            (too_much(rope) ? ", more than the crew can pull" : "");
  labels.place(list, {{}, words, size, Anchor::start, ink, 0.0, true}, hand, bounds);
}

}  // namespace stowpath
