#include "sim/mechanism/pivot_play.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/mechanism/standing.h"
#include "sim/mechanism/upper_reach.h"

namespace stowpath {

namespace {

/// The lean of the same foot on the same floor with the pivot higher by `rise`.
double steeper(Vec2 axle, double lean, double rise) {
  return lean_for(axle, norm(axle) * std::cos(lean + std::atan2(axle.y, axle.x)) + rise);
}

void widen_leans(const Model& model, Move& move) {
  if (!stands_over_stations(move)) return;
  for (Segment& segment : move.segments) {
    double& least = segment.from.lean <= segment.to.lean ? segment.from.lean : segment.to.lean;
    least = std::min(least, steeper(model.axle, model.working_leans.lo, move.seat->rise));
  }
}

double hook_reach(const Model& model) {
  double reach = 0.0;
  for (const StairPart& part : model.stair) {
    if (part.kind != PartKind::hook) continue;
    for (const Vec2 corner : part.outline.core) reach = std::max(reach, norm(corner) + part.outline.radius);
  }
  return reach;
}

void add_growth(const Model& model, Move& move) {
  MoveSeat& seat = *move.seat;
  const double least_lean = steeper(model.axle, model.working_leans.lo, seat.rise);
  for (const Segment& segment : move.segments) {
    if (segment.kind != SegmentKind::drag) continue;
    const double turn = (seat.rise + model.floor_uneven) * drag_turn(model.linkage, segment, least_lean);
    seat.growth = std::max(seat.growth, turn * upper_reach(model, segment.drag.hinge));
    seat.hook_growth = std::max(seat.hook_growth, turn * hook_reach(model));
  }
}

}  // namespace

double wander_rise(double slack, Interval touch) {
  const double most = std::max(std::abs(touch.lo), std::abs(touch.hi));
  return slack * (1.0 - std::cos(std::min(most, std::numbers::pi)));
}

double drag_turn(const Linkage& linkage, const Segment& drag, double least_lean) {
  // 1 / (R sin), R and the angle of the hinge about the pivot at the same height of the hinge. The angle only grows from
  // the standing lean towards level, and the sine with it.
  const HingeSwing swing = hinge_swing(linkage, drag.from, drag.drag.hinge);
  const double from = std::sin(least_lean + swing.phase), to = std::sin(drag.to.lean + swing.phase);
  return 1.0 / (swing.reach * std::min(from, to));
}

void allow_play(const Model& model, Interval touch, Move& move) {
  move.seat = MoveSeat{touch, wander_rise(model.hook_slack, touch)};
  add_growth(model, move);
  widen_leans(model, move);
}

void allow_assumed_play(Model& model) {
  for (Move& move : model.moves) allow_play(model, {-model.seat_range, model.seat_range}, move);
}

bool counts_further(const Model& model, const Move& move) {
  return move.seat && (move.seat->touch.lo < -model.seat_range || move.seat->touch.hi > model.seat_range);
}

}  // namespace stowpath
