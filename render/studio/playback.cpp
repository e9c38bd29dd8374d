#include "render/studio/playback.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "render/sheet/view.h"

namespace stowpath {
namespace {

constexpr double kTurning = 15.0 * std::numbers::pi / 180.0;  // shown in one second [rad/s]
constexpr double kRolling = 1.0;                              // [m/s]
constexpr double kShortest = 0.8;                             // of any move [s]

// Where the stair stands before the move: at the end of the last one, else where its first roll or move has it.
double station_before(const Model& model, std::size_t move) {
  for (std::size_t k = move; k-- > 0;) {
    if (!model.moves[k].segments.empty()) return model.moves[k].segments.back().to.station;
  }
  return model.span.middle();
}

double greatest_turn(const Segment& s) {
  double turn = std::abs(s.to.lean - s.from.lean);
  for (std::size_t k = 0; k < s.from.folds.size(); ++k) turn = std::max(turn, std::abs(s.to.folds[k] - s.from.folds[k]));
  return turn;
}

Configuration standing_at(const Model& model, double station) {
  Configuration pose = working_configuration(model);
  pose.station = station;
  return pose;
}

}  // namespace

Configuration pose_at(const Model& model, const Place& place) {
  const Move& move = model.moves.at(place.move);
  if (move.segments.empty()) return standing_at(model, station_before(model, place.move));
  if (stands_over_stations(move)) {
    const double from = station_before(model, place.move), to = move.segments.back().to.station;
    return standing_at(model, move.kind == MoveKind::stand ? from : from + place.progress * (to - from));
  }
  const double along = std::clamp(place.progress, 0.0, 1.0) * static_cast<double>(move.segments.size());
  const std::size_t k = std::min(static_cast<std::size_t>(along), move.segments.size() - 1);
  return at(model.linkage, move.segments[k], along - static_cast<double>(k));
}

Place step_forward(const Model& model, const Place& place) {
  if (place.progress < 1.0) return {place.move, 1.0};
  return place.move + 1 < model.moves.size() ? Place{place.move + 1, 1.0} : place;
}

Place step_back(const Model&, const Place& place) {
  if (place.progress > 0.0) return {place.move, 0.0};
  return place.move > 0 ? Place{place.move - 1, 0.0} : place;
}

double showing_time(const Model& model, std::size_t number) {
  const Move& move = model.moves.at(number);
  double time = 0.0;
  for (const Segment& segment : move.segments) {
    const double rolled = stands_over_stations(move) ? std::abs(segment.to.station - station_before(model, number))
                                                     : std::abs(segment.to.station - segment.from.station);
    time += std::max(greatest_turn(segment) / kTurning, rolled / kRolling);
  }
  return std::max(kShortest, time);
}

Place run_on(const Model& model, Place place, double seconds) {
  while (seconds != 0.0 && !at_end(model, place, seconds > 0.0)) {
    const double whole = showing_time(model, place.move);
    const double wanted = place.progress + seconds / whole, reached = std::clamp(wanted, 0.0, 1.0);
    seconds = (wanted - reached) * whole;
    place.progress = reached;
    if (seconds == 0.0) break;
    if (at_end(model, place, seconds > 0.0)) break;
    if (seconds > 0.0) place = {place.move + 1, 0.0};
    if (seconds < 0.0) place = {place.move - 1, 1.0};
  }
  return place;
}

Place begin_run(const Model& model, const Place& place, bool forward) {
  if (!at_end(model, place, forward)) return place;
  return forward ? Place{} : Place{model.moves.size() - 1, 1.0};
}

bool at_end(const Model& model, const Place& place, bool forward) {
  return forward ? place.move + 1 >= model.moves.size() && place.progress >= 1.0
                 : place.move == 0 && place.progress <= 0.0;
}

}  // namespace stowpath
