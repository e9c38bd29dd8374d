#include "sim/hoist/winch.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>
#include <numbers>
#include <random>
#include <stdexcept>
#include <string>

using namespace stowpath;

namespace {

Winch worm_winch() {
  Winch winch;
  winch.drum = 0.06;
  winch.ratio = 30;
  winch.crank = 0.2;
  winch.worm_lead = 0.07;
  winch.worm_friction = 0.1;
  return winch;
}

// The same by turning the drum a hair at a time.
double wound_slowly(double drum, double drum_length, double rope, double turns) {
  const int steps = 200'000;
  double wound = 0.0;
  for (int i = 0; i < steps; ++i) {
    const double turn = turns * (i + 0.5) / steps;
    const int layer = 1 + static_cast<int>(turn / std::floor(drum_length / rope + 1e-9));
    wound += std::numbers::pi * drum_layer_diameter(drum, rope, layer) * turns / steps;
  }
  return wound;
}

}  // namespace

TEST_CASE("winch: layers fill one after the other", "[hoist]") {
  const double around = std::numbers::pi * 0.068;  // first layer of a drum of 60 mm and rope of 8 mm
  const DrumWind full = wind_drum(0.06, 0.08, 0.008, 10 * around * (1 - 1e-12));
  CHECK(full.layers == 1);
  CHECK(full.turns == Approx(10));
  CHECK(full.outer_diameter == Approx(0.068));
  const DrumWind second = wind_drum(0.06, 0.08, 0.008, 10 * around + 3 * std::numbers::pi * 0.084);
  CHECK(second.layers == 2);
  CHECK(second.turns == Approx(13));
  CHECK(second.outer_diameter == Approx(0.084));
  CHECK(wind_drum(0.06, 0.08, 0.008, 0.0).turns == 0.0);
}

// Compared with slow winding; a step that straddles two layers is off by 1e-4 of a turn or so.
TEST_CASE("winch: the turns of a drum wind on the length asked for", "[hoist]") {
  std::mt19937 random(31);
  std::uniform_real_distribution<double> drum(0.04, 0.1), rope(0.004, 0.012), flange(0.03, 0.2), length(0.5, 25.0);
  for (int i = 0; i < 20; ++i) {
    const double D = drum(random), d = rope(random), w = flange(random), l = length(random);
    const DrumWind wind = wind_drum(D, w, d, l);
    CHECK(wound_slowly(D, w, d, wind.turns) == Approx(l).epsilon(1e-4));
  }
}

TEST_CASE("winch: a drum of unknown length is wound in one layer, which asks the most turns", "[hoist]") {
  const DrumWind one = wind_drum(0.06, std::nullopt, 0.008, 12.0);
  const DrumWind many = wind_drum(0.06, 0.08, 0.008, 12.0);
  CHECK_FALSE(one.layers_known);
  CHECK(many.layers_known);
  CHECK(one.layers == 1);
  CHECK(many.layers > 1);
  CHECK(one.turns > many.turns);
}

TEST_CASE("winch: without losses the handle's work is the line's", "[hoist]") {
  Winch winch = worm_winch();
  winch.efficiency = 1.0;
  const WinchRun run = winch_run(winch, 0.008, 10.0, 300.0, 30.0);
  CHECK(*run.handle_force * 2 * std::numbers::pi * *winch.crank * run.turns == Approx(300.0 * 10.0));
  CHECK(run.minutes == Approx(run.turns / 30.0));
  CHECK(run.turns == Approx(30.0 * run.drum_turns));
}

TEST_CASE("winch: a worm's efficiency counts where none is given", "[hoist]") {
  Winch winch = worm_winch();
  CHECK(winch_efficiency(winch).source.id == "S-WORM-eta");
  CHECK(winch_efficiency(winch).share < 0.5);
  winch.efficiency = 0.4;
  CHECK(winch_efficiency(winch).share == 0.4);
  CHECK(winch_efficiency(winch).source.id == "given");
}

TEST_CASE("winch: what holds by friction is said to be no brake, and what does not hold at all says so", "[hoist]") {
  Winch winch = worm_winch();
  const WinchRun holds = winch_run(winch, 0.008, 10.0, 300.0, 30.0);
  CHECK(holds.self_locking);
  CHECK(holds.hold == WinchHold::friction);
  CHECK(holds.back_efficiency.value() < 0.0);
  CHECK(std::string(holds.hold_text).find("friction only") == 0);
  CHECK(std::string(holds.hold_text).find("not a brake") != std::string::npos);
  winch.worm_friction = 0.05;  // the same worm, oiled
  CHECK_FALSE(winch_run(winch, 0.008, 10.0, 300.0, 30.0).self_locking);
  winch.worm_lead.reset();
  const WinchRun plain = winch_run(winch, 0.008, 10.0, 300.0, 30.0);
  CHECK(plain.hold == WinchHold::nothing);
  CHECK(std::string(plain.hold_text).find("nothing: ") == 0);
  CHECK_FALSE(plain.back_efficiency);
}

TEST_CASE("winch: the torque asked for stands beside the drive's", "[hoist]") {
  Winch winch = worm_winch();
  winch.crank.reset();
  winch.torque = 5.0;
  const WinchRun run = winch_run(winch, 0.008, 10.0, 300.0, 500.0);
  CHECK_FALSE(run.handle_force);
  CHECK(run.torque_given.value() == 5.0);
  CHECK(run.torque == Approx(300.0 * 0.034 / (30.0 * run.efficiency.share)));
}

TEST_CASE("winch: what cannot turn or wind is refused", "[hoist]") {
  const Winch winch = worm_winch();
  CHECK_THROWS_AS(winch_run(winch, 0.008, 10.0, 300.0, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(winch_run(winch, 0.008, 10.0, -1.0, 30.0), std::invalid_argument);
  CHECK_THROWS_AS(winch_run(winch, 0.0, 10.0, 300.0, 30.0), std::invalid_argument);
  CHECK_THROWS_AS(wind_drum(0.06, 0.007, 0.008, 10.0), std::invalid_argument);
  CHECK_THROWS_AS(wind_drum(0.06, 0.08, 0.008, std::numeric_limits<double>::infinity()), std::invalid_argument);
}

// Common practice, no source: a worm hand winch turned by its crank was far too slow, and a drill made it quick. Over
// every plausible winch, haul, rope and speed, not for one: the crank takes at least ten times the drill's minutes, and
// never less than several minutes where the drill never takes more than a quarter of an hour.
TEST_CASE("winch: whatever the worm winch, cranking takes ten times a drill's minutes or more", "[hoist]") {
  double least_ratio = 1e9, shortest_crank = 1e9, longest_drill = 0.0;
  Winch winch = worm_winch();
  for (const double ratio : {20.0, 25.0, 30.0, 40.0}) {
    for (const double drum : {0.05, 0.06, 0.07, 0.09}) {
      for (const double haul : {8.0, 12.0, 16.0, 20.0}) {
        for (const double rope : {0.004, 0.006, 0.008}) {
          for (const std::optional<double> drum_length : {std::optional<double>(), std::optional(0.1)}) {
            for (const double cranks : {20.0, 30.0, 40.0}) {
              for (const double drill : {400.0, 600.0, 800.0}) {
                winch.ratio = ratio;
                winch.drum = drum;
                winch.drum_length = drum_length;
                const double by_crank = winch_run(winch, rope, haul, 200.0, cranks).minutes;
                const double by_drill = winch_run(winch, rope, haul, 200.0, drill).minutes;
                least_ratio = std::min(least_ratio, by_crank / by_drill);
                shortest_crank = std::min(shortest_crank, by_crank);
                longest_drill = std::max(longest_drill, by_drill);
              }
            }
          }
        }
      }
    }
  }
  CHECK(least_ratio >= 10.0 * (1 - 1e-12));  // 400 turns against 40, but for rounding
  CHECK(shortest_crank > 8.0);
  CHECK(longest_drill < 15.0);
}
