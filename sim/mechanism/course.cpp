#include "sim/mechanism/course.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace stowpath {

namespace {

constexpr double kEpsilon = std::numeric_limits<double>::epsilon();

// A height is a sum of at most six products, each good to a few units in the last place of the stair's size.
constexpr double kHeightRounding = 64.0 * kEpsilon;

double linear(double from, double to, double u) { return from + u * (to - from); }

Configuration straight_at(const Segment& segment, double u) {
  Configuration here;
  here.station = linear(segment.from.station, segment.to.station, u);
  here.lean = linear(segment.from.lean, segment.to.lean, u);
  for (std::size_t k = 0; k < here.folds.size(); ++k)
    here.folds[k] = linear(segment.from.folds[k], segment.to.folds[k], u);
  return here;
}

double linear_half(double from, double to, double width) {
  if (from == to) return 0.0;
  return 0.5 * width * std::abs(to - from) + 4.0 * kEpsilon * (std::abs(from) + std::abs(to));
}

Turns straight_turns(const Linkage& linkage, const Segment& segment, double width) {
  Turns turns;
  turns.station = linear_half(segment.from.station, segment.to.station, width);
  turns.joint[0] = linear_half(segment.from.lean, segment.to.lean, width);
  for (std::size_t k = 0; k < segment.from.folds.size(); ++k)
    turns.joint[k + 1] = linear_half(segment.from.folds[k], segment.to.folds[k], width);
  // The sections' own leans: joints that turn against each other cancel, their rounding does not.
  double sum = 0.0, rounding = 0.0;
  for (std::size_t j = 0; j < static_cast<std::size_t>(linkage.sections); ++j) {
    const double from = j == 0 ? segment.from.lean : segment.from.folds[j - 1];
    const double to = j == 0 ? segment.to.lean : segment.to.folds[j - 1];
    sum += (j == 0 ? 1.0 : linkage.fold_sign[j - 1]) * (to - from);
    if (from != to) rounding += 8.0 * kEpsilon * (std::abs(from) + std::abs(to));
    turns.section[j] = 0.5 * width * std::abs(sum) + rounding;
  }
  return turns;
}

struct Foot {
  double reach = 0.0;  // hinge to axle [m]
  double phase = 0.0;  // of the axle about the hinge: the axle is under it where lean + phase = 0 [rad]
};

Foot foot_of(const Linkage& linkage, const DragRule& rule) {
  const Vec2 arm = rule.axle - linkage.proximal(rule.hinge + 1);
  return {norm(arm), std::atan2(arm.y, arm.x)};
}

double lean_at_height(const Foot& foot, double hinge_over_axle) {
  return std::acos(std::clamp(hinge_over_axle / foot.reach, -1.0, 1.0)) - foot.phase;
}

// Least and greatest height of a hinge over leans [lo, hi]: at the ends, or where it passes under or over the pivot.
Interval hinge_heights(const Linkage& linkage, const HingeSwing& swing, Interval leans) {
  const auto height = [&](double lean) { return linkage.pivot.y - swing.reach * std::cos(lean + swing.phase); };
  const auto passes = [&](double angle) {
    const double turn = 2.0 * std::numbers::pi;
    return std::floor((leans.hi + swing.phase - angle) / turn) > std::floor((leans.lo + swing.phase - angle) / turn);
  };
  Interval heights{std::min(height(leans.lo), height(leans.hi)), std::max(height(leans.lo), height(leans.hi))};
  if (passes(0.0)) heights.lo = linkage.pivot.y - swing.reach;
  if (passes(std::numbers::pi)) heights.hi = linkage.pivot.y + swing.reach;
  const double size = std::abs(linkage.pivot.y) + swing.reach;
  return {heights.lo - kHeightRounding * size, heights.hi + kHeightRounding * size};
}

Turns drag_turns(const Linkage& linkage, const Segment& segment, double u0, double u1) {
  const Configuration from = straight_at(segment, u0), to = straight_at(segment, u1);
  const Configuration middle = at(linkage, segment, 0.5 * (u0 + u1));
  const auto heights = hinge_heights(linkage, hinge_swing(linkage, segment.from, segment.drag.hinge),
                                     {std::min(from.lean, to.lean), std::max(from.lean, to.lean)});
  const Foot foot = foot_of(linkage, segment.drag);
  const auto below = static_cast<std::size_t>(segment.drag.hinge + 1);
  const double lean = section_leans(linkage, middle)[below];
  const double least = lean_at_height(foot, heights.hi - segment.drag.axle_height);
  const double greatest = lean_at_height(foot, heights.lo - segment.drag.axle_height);

  Turns turns;
  turns.station = linear_half(segment.from.station, segment.to.station, u1 - u0);
  turns.joint[0] = linear_half(segment.from.lean, segment.to.lean, u1 - u0);
  const double lower = std::max({greatest - lean, lean - least, 0.0}) + 16.0 * kEpsilon * (1.0 + std::abs(lean));
  turns.joint[below] = turns.joint[0] + lower;
  for (std::size_t j = 0; j < static_cast<std::size_t>(linkage.sections); ++j)
    turns.section[j] = j < below ? turns.joint[0] : lower;
  return turns;
}

}  // namespace

double drag_lean(const Linkage& linkage, const DragRule& rule, double hinge_up) {
  const Foot foot = foot_of(linkage, rule);
  const double over_axle = hinge_up - rule.axle_height;
  const double rounding = kHeightRounding * (std::abs(hinge_up) + std::abs(rule.axle_height) + foot.reach);
  if (!(std::abs(over_axle) <= foot.reach + rounding)) return std::numeric_limits<double>::quiet_NaN();
  return lean_at_height(foot, over_axle);
}

Configuration at(const Linkage& linkage, const Segment& segment, double u) {
  Configuration here = straight_at(segment, u);
  if (segment.kind == SegmentKind::straight) return here;
  const auto k = static_cast<std::size_t>(segment.drag.hinge);
  const Vec2 hinge = place_sections(linkage, here)[k] * linkage.distal(segment.drag.hinge);
  const double upper = section_leans(linkage, here)[k];
  here.folds[k] = linkage.fold_sign[k] * (drag_lean(linkage, segment.drag, hinge.y) - upper);
  return here;
}

Turns half_turns(const Linkage& linkage, const Segment& segment, double u0, double u1) {
  if (segment.kind == SegmentKind::straight) return straight_turns(linkage, segment, u1 - u0);
  return drag_turns(linkage, segment, u0, u1);
}

}  // namespace stowpath
