#include "sim/remedy/seated.h"

#include <numbers>

#include "sim/mechanism/pivot_play.h"

namespace stowpath {
namespace {

constexpr Interval kAllRound{-std::numbers::pi, std::numbers::pi};

}  // namespace

void count_with_seat(const SeatReport& report, Model& model) {
  const Interval assumed{-model.seat_range, model.seat_range};
  for (std::size_t m = 0; m < report.moves.size(); ++m) {
    const SeatWander& seat = report.moves[m];
    if (!seat.judged && !seat.unknown) continue;
    const Interval touch = seat.held && !seat.unknown ? seat.off_crown : kAllRound;
    allow_play(model, hull(assumed, touch), model.moves[m]);
  }
}

void seat_alike(const Model& like, Model& model) {
  for (std::size_t m = 0; m < model.moves.size() && m < like.moves.size(); ++m) {
    const std::optional<MoveSeat>& seat = like.moves[m].seat;
    if (!seat) continue;
    allow_play(model, seat->touch, model.moves[m]);
    model.moves[m].seat = seat;
  }
}

}  // namespace stowpath
