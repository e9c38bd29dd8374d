#include "tests/bench/reference_scene.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace stowpath::bench {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr Interval kRailStations{0.3, 8.7};  // of the stair's middle
constexpr double kHome = 4.5;
constexpr double kNear = 0.05;  // the first twenty drawn boxes come at least so near [m]

Linkage two_sections() {
  Linkage out;
  out.pivot = {0.0, 2.6};
  out.sections = 2;
  out.length = {1.9, 1.7, 0.0};
  out.hinge_across = {-0.07, 0.0};
  out.fold_sign = {-1.0, -1.0};
  return out;
}

BoxPart box_on(int section, Interval along, Interval across, std::vector<Interval> stations) {
  return {make_box({along.lo, across.lo}, {along.hi, across.hi}), {}, std::move(stations), section};
}

std::vector<BoxPart> stair() {
  const std::vector<Interval> sides{{-0.25, -0.21}, {0.21, 0.25}}, plates{{-0.29, -0.25}, {0.25, 0.29}};
  std::vector<BoxPart> out{
      box_on(0, {0.06, 1.88}, {-0.045, 0.045}, sides),         box_on(1, {0.02, 1.68}, {-0.045, 0.045}, sides),
      box_on(0, {-0.10, -0.05}, {-0.012, 0.012}, sides),       box_on(0, {-0.05, 0.06}, {0.045, 0.06}, sides),
      box_on(0, {0.06, 0.25}, {0.05, 0.058}, sides),           box_on(0, {1.60, 1.89}, {-0.04, 0.04}, plates),
      box_on(0, {1.30, 1.59}, {-0.04, 0.04}, plates),          box_on(0, {1.84, 1.88}, {-0.068, -0.05}, {{-0.2, 0.2}}),
      box_on(1, {0.02, 0.06}, {-0.068, -0.05}, {{-0.2, 0.2}}), box_on(1, {1.55, 1.70}, {0.05, 0.09}, plates),
      box_on(1, {1.55, 1.66}, {-0.03, 0.03}, plates)};
  for (int k = 0; k < 7; ++k) {
    const double along = 0.24 + 0.24 * k;
    out.push_back(box_on(0, {along, along + 0.03}, {-0.04, 0.10}, {{-0.21, 0.21}}));
    out.push_back(box_on(1, {along - 0.1, along - 0.07}, {-0.04, 0.10}, {{-0.21, 0.21}}));
  }
  return out;
}

Segment segment(double lean0, double fold0, double lean1, double fold1) {
  Segment out;
  out.from = {kHome, lean0 * kDegree, {fold0 * kDegree, 0.0}};
  out.to = {kHome, lean1 * kDegree, {fold1 * kDegree, 0.0}};
  return out;
}

Segment roll(double lean, double fold) {
  Segment out = segment(lean, fold, lean, fold);
  out.stations = kRailStations;
  return out;
}

/// Eleven brackets, each an arm and a plate, that the hooks pass 15 mm away.
std::vector<BoxPart> brackets() {
  std::vector<Interval> stations;
  for (int k = 0; k < 11; ++k) stations.push_back({0.1 + 0.88 * k - 0.02, 0.1 + 0.88 * k + 0.02});
  const Pose2 back_and_down = make_pose({0.0, 2.6}, 225.0 * kDegree);
  return {{make_box({0.04, -0.008}, {0.44, 0.008}), back_and_down, stations, 0},
          {make_box({-0.01, -0.08}, {0.0, 0.08}), make_pose({-0.34, 2.28}, 0.0), stations, 0}};
}

/// Floor, ceiling, back wall, loft and pipe along the whole rail, and a wall at either end.
std::vector<BoxPart> room() {
  const std::vector<Interval> all{{-0.2, 9.2}};
  const auto box = [&](Vec2 least, Vec2 greatest) { return BoxPart{make_box(least, greatest), {}, all, 0}; };
  BoxPart ends = box({-0.36, 0.0}, {4.5, 2.9});
  ends.stations = {{-0.2, -0.01}, {9.01, 9.2}};
  return {box({-0.36, -0.1}, {4.5, 0.065}),  box({-0.36, 2.74}, {4.5, 2.9}),   box({-0.46, 0.0}, {-0.36, 2.9}),
          box({-0.36, 2.25}, {-0.07, 2.42}), box({-0.02, 2.58}, {0.02, 2.62}), ends};
}

}  // namespace

ReferenceScene::ReferenceScene(int obstacles)
    : linkage(two_sections()),
      procedure{roll(46, 0), segment(46, 0, 75, 40), segment(75, 40, 88, 120), segment(88, 120, 90, 176),
                roll(90, 176)},
      moving(stair()),
      needs(1, 1) {
  needs.at(0, 0) = {true, false, kMargin, 0.0};
  for (const BoxPart& p : moving) {
    Mover mover;
    mover.body = p.section;
    mover.outline = Outline(p.outline);
    mover.stations = p.stations;
    movers.push_back(std::move(mover));
  }
  draw_fixed(obstacles);
  std::vector<Target> all;
  for (const BoxPart& p : fixed) all.push_back({Outline(placed(p.outline, p.X_FB)), p.stations, 0.0, 0});
  targets = TargetSet(std::move(all));
}

bool ReferenceScene::clear_of(const BoxPart& box, double margin) {
  targets = TargetSet({{Outline(placed(box.outline, box.X_FB)), box.stations, 0.0, 0}});
  needs.at(0, 0).margin = margin;
  WalkCounts counts;
  const bool clear = prove_procedure(counts);
  needs.at(0, 0).margin = kMargin;
  return clear;
}

void ReferenceScene::keep(const BoxPart& box) {
  if (!clear_of(box, kMargin)) throw std::logic_error("a box of the room is in the way");
  fixed.push_back(box);
}

void ReferenceScene::draw_fixed(int obstacles) {
  std::mt19937 random(7);
  const auto number = [&](double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); };
  for (const BoxPart& b : brackets()) keep(b);
  for (const BoxPart& b : room()) keep(b);
  for (int prisms = 29; prisms < obstacles;) {
    const Vec2 half{number(0.01, 0.4), number(0.01, 0.4)};
    const Pose2 X = make_pose({number(-0.3, 4.0), number(0.0, 2.8)}, number(-3, 3));
    const double middle = number(0.0, 9.0), width = number(0.02, 0.5);
    std::vector<Interval> stations{{middle - width, middle + width}};
    if (prisms < 47 && prisms + 1 < obstacles)
      stations.push_back(stations[0] + number(1.1, 2.0));  // nine outlines stand twice
    const BoxPart box{make_box(-half, half), X, stations, 0};
    const bool near = fixed.size() < 28;
    if (!clear_of(box, kMargin) || (near && clear_of(box, kNear))) continue;
    fixed.push_back(box);
    prisms += static_cast<int>(stations.size());
  }
}

bool ReferenceScene::prove_procedure(WalkCounts& counts) const {
  bool clear = true;
  for (const Segment& s : procedure) {
    const Proof proof = prove(stage(s));
    clear = clear && proof.spans.empty();
    counts.distances += proof.counts.distances;
    counts.rejects += proof.counts.rejects;
  }
  return clear;
}

double greatest_travel(const ReferenceScene& scene, const Segment& segment) {
  if (segment.over_stations()) return segment.stations.length();
  const double lean = std::abs(segment.to.lean - segment.from.lean);
  const double fold = std::abs(segment.to.folds[0] - segment.from.folds[0]);
  const double reach = 0.15;  // parts stand out of the datum line by less [m]
  return lean * (scene.linkage.length[0] + scene.linkage.length[1] + reach) + fold * (scene.linkage.length[1] + reach);
}

}  // namespace stowpath::bench
