#include "sim/loads/moving_load.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <stdexcept>

using namespace stowpath;

TEST_CASE("moving load: no sampled place beats the refined peaks", "[loads]") {
  std::mt19937 random(21);
  std::uniform_real_distribution<double> span(0.4, 2.0);
  for (int draw = 0; draw < 5; ++draw) {
    Beam beam{{0.0}, {}, 8000.0, {}};
    for (int i = 0; i < 4; ++i) beam.supports.push_back(beam.supports.back() + span(random));
    beam.ends = {-0.3, beam.supports.back() + 0.3};
    beam.spread = {{beam.ends, 30.0}};
    const std::vector<PointLoad> group{{-0.26, 500.0}, {0.26, 700.0}};
    const Interval travel{beam.ends.lo + 0.26, beam.ends.hi - 0.26};
    const MovingPeaks peaks = moving_peaks(beam, group, travel);
    for (int k = 0; k <= 3000; ++k) {
      const auto solution = solve_beam(beam, group_at(group, travel.lo + travel.length() * k / 3000.0));
      const BeamPeaks here = beam_peaks(solution);
      const double rounding = 1.0 + 1e-12;
      CHECK(here.sagging.value <= peaks.sagging.value * rounding);
      CHECK(here.hogging.value <= peaks.hogging.value * rounding);
      CHECK(here.down.value <= peaks.down.value * rounding);
      for (std::size_t i = 0; i < beam.supports.size(); ++i) {
        CHECK(solution.reactions[i] <= peaks.press[i].value * rounding);
        CHECK(-solution.reactions[i] <= peaks.hold[i].value * rounding);
      }
    }
  }
}

TEST_CASE("moving load: a load that stays is the beam under that load", "[loads]") {
  const Beam beam{{0.0, 1.0, 2.5}, {0.0, 2.5}, 1000.0, {}};
  const std::vector<PointLoad> group{{0.0, 100.0}};
  const MovingPeaks peaks = moving_peaks(beam, group, {1.6, 1.6});
  const BeamPeaks still = beam_peaks(solve_beam(beam, group_at(group, 1.6)));
  CHECK(peaks.sagging.value == Approx(still.sagging.value).epsilon(1e-14));  // two methods, rounding alone
  CHECK(peaks.down.position == 1.6);
  CHECK_THROWS_AS(moving_peaks(beam, group, {1.0, 0.0}), std::invalid_argument);
  CHECK_THROWS_AS(moving_peaks(beam, group, {1.0, 3.0}), std::invalid_argument);
}
