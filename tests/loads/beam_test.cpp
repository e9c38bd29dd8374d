#include "sim/loads/beam.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "tests/support/three_moments.h"

using namespace stowpath;

namespace {

using Random = std::mt19937;

double uniform(Random& random, double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); }

Beam random_beam(Random& random, bool overhangs, bool spread) {
  Beam beam;
  beam.stiffness = std::pow(10.0, uniform(random, 2.0, 5.0));
  double at = uniform(random, -3.0, 3.0);
  const int supports = std::uniform_int_distribution<int>(2, 9)(random);
  for (int i = 0; i < supports; ++i, at += uniform(random, 0.2, 3.0)) beam.supports.push_back(at);
  beam.ends = {beam.supports.front(), beam.supports.back()};
  if (overhangs) beam.ends = {beam.ends.lo - uniform(random, 0.01, 1.0), beam.ends.hi + uniform(random, 0.01, 1.0)};
  if (spread) beam.spread.push_back({beam.ends, uniform(random, 1.0, 500.0)});
  return beam;
}

std::vector<PointLoad> random_loads(Random& random, const Beam& beam) {
  std::vector<PointLoad> loads;
  const int count = std::uniform_int_distribution<int>(1, 5)(random);
  for (int i = 0; i < count; ++i)
    loads.push_back({uniform(random, beam.ends.lo, beam.ends.hi), uniform(random, -500.0, 2000.0)});
  return loads;
}

double size_of(const std::vector<PointLoad>& loads) {
  double sum = 1.0;
  for (const PointLoad& load : loads) sum += std::abs(load.force);
  return sum;
}

}  // namespace

TEST_CASE("beam: reactions balance every load in force and moment, overhangs and part loads included", "[loads]") {
  Random random(11);
  for (int draw = 0; draw < 300; ++draw) {
    Beam beam = random_beam(random, true, true);
    beam.spread.push_back({{beam.ends.lo + 0.1, beam.ends.middle()}, 300.0});
    const auto loads = random_loads(random, beam);
    const BeamSolution solution = solve_beam(beam, loads);
    double force = 0.0, moment = 0.0, scale = size_of(loads);
    for (const PointLoad& load : loads) force += load.force, moment += load.force * load.at;
    for (const SpreadLoad& spread : beam.spread) {
      const double total = spread.per_length * spread.at.length();
      force += total, moment += total * spread.at.middle(), scale += total;
    }
    for (std::size_t i = 0; i < beam.supports.size(); ++i) {
      force -= solution.reactions[i];
      moment -= solution.reactions[i] * beam.supports[i];
    }
    CHECK(std::abs(force) < 1e-11 * scale);          // rounding of a dozen sums
    CHECK(std::abs(moment) < 1e-10 * scale * 10.0);  // arms up to some 20 m
  }
}

TEST_CASE("beam: the three-moment equation gives the same moments over every support", "[loads]") {
  Random random(12);
  for (int draw = 0; draw < 300; ++draw) {
    const Beam beam = random_beam(random, false, draw % 2 == 0);
    const auto loads = random_loads(random, beam);
    const BeamSolution solution = solve_beam(beam, loads);
    const auto moments = testing::three_moments(beam, loads);
    const double scale = size_of(loads) + 500.0 * beam.ends.length();
    for (std::size_t i = 0; i < moments.size(); ++i)  // rounding, and a sum of some dozen terms
      CHECK(moment_at(solution, beam.supports[i]) == Approx(moments[i]).margin(1e-10 * scale));
  }
}

// Maxwell (1864) and Betti (1872): the deflection at A from a unit load at B is that at B from one at A.
TEST_CASE("beam: deflections are reciprocal", "[loads]") {
  Random random(13);
  for (int draw = 0; draw < 300; ++draw) {
    const Beam beam = random_beam(random, true, false);
    const double a = uniform(random, beam.ends.lo, beam.ends.hi), b = uniform(random, beam.ends.lo, beam.ends.hi);
    const std::vector<PointLoad> at_a{{a, 1.0}}, at_b{{b, 1.0}};
    const auto from_a = solve_beam(beam, at_a), from_b = solve_beam(beam, at_b);
    const double size = std::sqrt(deflection_at(from_a, a) * deflection_at(from_b, b));
    CHECK(std::abs(deflection_at(from_a, b) - deflection_at(from_b, a)) <= 1e-9 * size);
  }
}

TEST_CASE("beam: loads superpose", "[loads]") {
  Random random(14);
  for (int draw = 0; draw < 100; ++draw) {
    const Beam beam = random_beam(random, true, false);
    const auto one = random_loads(random, beam), two = random_loads(random, beam);
    std::vector<PointLoad> both = one;
    both.insert(both.end(), two.begin(), two.end());
    const auto a = solve_beam(beam, one), b = solve_beam(beam, two), sum = solve_beam(beam, both);
    const double size =
        beam_peaks(a).down.value + beam_peaks(a).up.value + beam_peaks(b).down.value + beam_peaks(b).up.value;
    for (int k = 0; k <= 20; ++k) {
      const double x = beam.ends.lo + beam.ends.length() * k / 20.0;
      // 1e-9 of the greatest deflection: each piece starts from its own support, so only rounding differs
      CHECK(deflection_at(sum, x) == Approx(deflection_at(a, x) + deflection_at(b, x)).margin(1e-9 * size));
      CHECK(moment_at(sum, x) == Approx(moment_at(a, x) + moment_at(b, x)).margin(1e-9 * (size_of(both))));
    }
  }
}

TEST_CASE("beam: deflection is zero at supports, and slope and deflection run on without a jump", "[loads]") {
  Random random(15);
  for (int draw = 0; draw < 100; ++draw) {
    const Beam beam = random_beam(random, true, true);
    const auto solution = solve_beam(beam, random_loads(random, beam));
    const BeamPeaks peaks = beam_peaks(solution);
    const double size = peaks.down.value + peaks.up.value;
    for (const double support : beam.supports) CHECK(std::abs(deflection_at(solution, support)) < 1e-9 * size);
    for (std::size_t i = 1; i < solution.pieces.size(); ++i) {
      const double x = solution.pieces[i].from, before = x - 1e-9;
      // a step of 1e-9 m times slopes of at most some sizes a decimetre
      CHECK(deflection_at(solution, before) == Approx(deflection_at(solution, x)).margin(1e-7 * size));
      CHECK(slope_at(solution, before) == Approx(slope_at(solution, x)).margin(1e-6 * size));
    }
  }
}

TEST_CASE("beam: the named peaks are those of dense sampling, never less", "[loads]") {
  Random random(16);
  for (int draw = 0; draw < 100; ++draw) {
    const Beam beam = random_beam(random, true, draw % 2 == 0);
    const auto solution = solve_beam(beam, random_loads(random, beam));
    const BeamPeaks peaks = beam_peaks(solution);
    double sagging = 0.0, hogging = 0.0, down = 0.0, up = 0.0;
    for (int k = 0; k <= 20'000; ++k) {
      const double x = beam.ends.lo + beam.ends.length() * k / 20'000.0;
      sagging = std::max(sagging, moment_at(solution, x));
      hogging = std::max(hogging, -moment_at(solution, x));
      down = std::max(down, deflection_at(solution, x));
      up = std::max(up, -deflection_at(solution, x));
    }
    const double rounding = 1e-12;
    CHECK(peaks.sagging.value >= sagging * (1 - rounding));
    CHECK(peaks.hogging.value >= hogging * (1 - rounding));
    CHECK(peaks.down.value >= down * (1 - rounding));
    CHECK(peaks.up.value >= up * (1 - rounding));
    CHECK(sagging == Approx(peaks.sagging.value).margin(0.01 * (peaks.sagging.value + peaks.hogging.value)));
    CHECK(down == Approx(peaks.down.value).margin(1e-3 * (peaks.down.value + peaks.up.value)));
    CHECK(deflection_at(solution, peaks.down.at) == Approx(peaks.down.value).margin(1e-12));
  }
}

// Cantilever beyond a support: tip deflection P c^2 (L + c) / 3EI for a simple span with an overhang c, from memory of
// the usual beam tables.
TEST_CASE("beam: an overhang deflects as the closed form says, on either side", "[loads]") {
  const double length = 2.0, over = 0.7, stiffness = 900.0, force = 120.0;
  const double tip = force * over * over * (length + over) / (3 * stiffness);
  const Beam beam{{0.0, length}, {-over, length + over}, stiffness, {}};
  const std::vector<PointLoad> right{{length + over, force}}, left{{-over, force}};
  CHECK(deflection_at(solve_beam(beam, right), length + over) == Approx(tip).epsilon(1e-12));
  CHECK(deflection_at(solve_beam(beam, left), -over) == Approx(tip).epsilon(1e-12));
  CHECK(solve_beam(beam, left).reactions[1] == Approx(-force * over / length).epsilon(1e-12));
  CHECK(beam_peaks(solve_beam(beam, left)).hogging.value == Approx(force * over).epsilon(1e-12));
}

TEST_CASE("beam: a load on a support goes straight into it", "[loads]") {
  const Beam beam{{0.0, 1.0, 2.5}, {-0.5, 3.0}, 1000.0, {}};
  const std::vector<PointLoad> loads{{1.0, 700.0}};
  const auto solution = solve_beam(beam, loads);
  CHECK(solution.reactions[1] == 700.0);
  CHECK(beam_peaks(solution).sagging.value == 0.0);
}

TEST_CASE("beam: what is no beam is refused", "[loads]") {
  const std::vector<PointLoad> none, off{{5.0, 1.0}}, nan{{0.5, std::numeric_limits<double>::quiet_NaN()}};
  CHECK_THROWS_AS(solve_beam({{0.0}, {0.0, 1.0}, 1.0, {}}, none), std::invalid_argument);
  CHECK_THROWS_AS(solve_beam({{0.0, 0.0}, {0.0, 1.0}, 1.0, {}}, none), std::invalid_argument);
  CHECK_THROWS_AS(solve_beam({{0.0, 2.0}, {0.0, 1.0}, 1.0, {}}, none), std::invalid_argument);
  CHECK_THROWS_AS(solve_beam({{0.0, 1.0}, {0.0, 1.0}, 0.0, {}}, none), std::invalid_argument);
  CHECK_THROWS_AS(solve_beam({{0.0, 1.0}, {0.0, 1.0}, 1.0, {}}, off), std::invalid_argument);
  CHECK_THROWS_AS(solve_beam({{0.0, 1.0}, {0.0, 1.0}, 1.0, {}}, nan), std::invalid_argument);
}
