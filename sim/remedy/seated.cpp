#include "sim/remedy/seated.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/clearance/wander.h"
#include "sim/loads/sag.h"
#include "sim/mechanism/standing.h"

namespace stowpath {
namespace {

constexpr Interval kAllRound{-std::numbers::pi, std::numbers::pi};

/// The lean of the same foot on the same floor with the pivot higher by `rise`.
double steeper(Vec2 axle, double lean, double rise) {
  return lean_for(axle, norm(axle) * std::cos(lean + std::atan2(axle.y, axle.x)) + rise);
}

void widen_leans(Vec2 axle, Move& move) {
  if (!move.seat || !stands_over_stations(move)) return;
  for (Segment& segment : move.segments) {
    double& least = segment.from.lean <= segment.to.lean ? segment.from.lean : segment.to.lean;
    least = std::min(least, steeper(axle, least, move.seat->rise));
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

void add_growth(const Model& model, const Move& move, double least_lean, MoveSeat& seat) {
  for (const Segment& segment : move.segments) {
    if (segment.kind != SegmentKind::drag) continue;
    const double turn = seat.rise * drag_turn(model.linkage, segment, least_lean);
    seat.growth = std::max(seat.growth, turn * upper_reach(model, segment.drag.hinge));
    seat.hook_growth = std::max(seat.hook_growth, turn * hook_reach(model));
  }
}

}  // namespace

void count_with_seat(const Scene& scene, const SeatReport& report, Model& model) {
  const Vec2 axle = stand(scene, make_linkage(scene)).axle;
  for (std::size_t m = 0; m < report.moves.size(); ++m) {
    const SeatWander& seat = report.moves[m];
    const Interval touch = seat.held && !seat.unknown ? seat.off_crown : kAllRound;
    const bool assumed = touch.lo >= -model.seat_range && touch.hi <= model.seat_range;
    if ((!seat.judged && !seat.unknown) || assumed) continue;
    Move& move = model.moves[m];
    move.seat = MoveSeat{touch, wander_rise(model.hook_slack, touch)};
    add_growth(model, move, steeper(axle, model.working_leans.lo, move.seat->rise), *move.seat);
    widen_leans(axle, move);
  }
}

void seat_alike(const Scene& scene, const Model& like, Model& model) {
  const Vec2 axle = stand(scene, make_linkage(scene)).axle;
  for (std::size_t m = 0; m < model.moves.size() && m < like.moves.size(); ++m) {
    model.moves[m].seat = like.moves[m].seat;
    widen_leans(axle, model.moves[m]);
  }
}

}  // namespace stowpath
