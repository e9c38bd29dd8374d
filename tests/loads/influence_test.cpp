#include "sim/loads/influence.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <stdexcept>

#include "sim/loads/moving_load.h"
#include "tests/support/dense_beam.h"

using namespace stowpath;

namespace {

using Random = std::mt19937;

double uniform(Random& random, double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); }

// Unequal spans, overhangs on either, both or no side, spread loads over all of it or a part.
Beam random_beam(Random& random, int supports) {
  Beam beam;
  beam.stiffness = std::pow(10.0, uniform(random, 2.0, 5.0));
  double at = uniform(random, -3.0, 3.0);
  for (int i = 0; i < supports; ++i, at += uniform(random, 0.2, 3.0)) beam.supports.push_back(at);
  beam.ends = {beam.supports.front(), beam.supports.back()};
  const int sides = std::uniform_int_distribution<int>(0, 3)(random);
  if (sides % 2 == 1) beam.ends.lo -= uniform(random, 0.01, 1.0);
  if (sides >= 2) beam.ends.hi += uniform(random, 0.01, 1.0);
  beam.spread.push_back({beam.ends, uniform(random, 0.0, 300.0)});
  const double a = uniform(random, beam.ends.lo, beam.ends.hi), b = uniform(random, beam.ends.lo, beam.ends.hi);
  if (sides != 1) beam.spread.push_back({{std::min(a, b), std::max(a, b)}, uniform(random, -200.0, 400.0)});
  return beam;
}

// Some stand over a support or at an end.
std::vector<PointLoad> random_loads(Random& random, const Beam& beam) {
  std::vector<PointLoad> loads{{uniform(random, beam.ends.lo, beam.ends.hi), uniform(random, 100.0, 2000.0)}};
  const int more = std::uniform_int_distribution<int>(0, 3)(random);
  for (int i = 0; i < more; ++i)
    loads.push_back({uniform(random, beam.ends.lo, beam.ends.hi), uniform(random, -500.0, 2000.0)});
  if (more == 1) loads.push_back({beam.supports[beam.supports.size() / 2], 400.0});
  if (more == 2) loads.push_back({beam.ends.lo, 300.0});
  if (more == 3) loads.push_back({beam.ends.hi, 300.0});
  return loads;
}

double size_of(const Beam& beam, const std::vector<PointLoad>& loads) {
  double sum = 1.0;
  for (const PointLoad& load : loads) sum += std::abs(load.force);
  for (const SpreadLoad& spread : beam.spread) sum += std::abs(spread.per_length) * beam.ends.length();
  return sum;
}

// Every place to the next 50 mm: a dense matrix with elements much shorter than its spans loses too many digits.
double snapped(double at) { return std::round(at * 20.0) / 20.0; }

Beam snapped(Beam beam) {
  for (double& support : beam.supports) support = snapped(support);
  beam.ends = {snapped(beam.ends.lo), snapped(beam.ends.hi)};
  for (SpreadLoad& spread : beam.spread) spread.at = {snapped(spread.at.lo), snapped(spread.at.hi)};
  return beam;
}

}  // namespace

TEST_CASE("beam: three methods give the same moments, reactions and deflections", "[loads]") {
  Random random(31);
  for (int draw = 0; draw < 200; ++draw) {
    const Beam beam = snapped(random_beam(random, std::uniform_int_distribution<int>(2, 9)(random)));
    auto loads = random_loads(random, beam);
    for (PointLoad& load : loads) load.at = snapped(load.at);
    const BeamSolution solution = solve_beam(beam, loads);
    const testing::DenseBeam dense = testing::dense_beam(beam, loads);
    const auto clapeyron = testing::three_moments_overhung(beam, loads);
    const Influence influence(beam);
    const double scale = size_of(beam, loads), peak = beam_peaks(solution).down.value + beam_peaks(solution).up.value;
    const double rounding = 1e-9;  // elements of 0.05 to 3 m: their stiffnesses differ by a factor of 2e5
    for (std::size_t i = 0; i < beam.supports.size(); ++i) {
      CHECK(moment_at(solution, beam.supports[i]) == Approx(clapeyron[i]).margin(1e-11 * scale));
      CHECK(influence.moment(beam.supports[i], loads) == Approx(clapeyron[i]).margin(1e-11 * scale));
      CHECK(solution.reactions[i] == Approx(dense.reactions[i]).margin(rounding * scale));
      CHECK(influence.reaction(i, loads) == Approx(solution.reactions[i]).margin(1e-12 * scale));
    }
    for (std::size_t i = 0; i < dense.nodes.size(); ++i) {
      CHECK(moment_at(solution, dense.nodes[i]) == Approx(dense.moments[i]).margin(rounding * scale));
      CHECK(deflection_at(solution, dense.nodes[i]) == Approx(dense.deflections[i]).margin(rounding * peak));
      CHECK(influence.deflection(dense.nodes[i], loads) == Approx(dense.deflections[i]).margin(rounding * peak));
    }
  }
}

TEST_CASE("influence: moments and deflections anywhere, and the peaks, are solve_beam's", "[loads]") {
  Random random(32);
  for (int draw = 0; draw < 300; ++draw) {
    const Beam beam = random_beam(random, std::uniform_int_distribution<int>(2, 30)(random));
    const auto loads = random_loads(random, beam);
    const BeamSolution solution = solve_beam(beam, loads);
    const Influence influence(beam);
    const BeamPeaks wanted = beam_peaks(solution);
    BeamPeaks peaks;
    influence.raise_peaks(loads, peaks);
    const double scale = size_of(beam, loads), size = wanted.down.value + wanted.up.value;
    CHECK(peaks.sagging.value == Approx(wanted.sagging.value).margin(1e-12 * scale));  // rounding alone, here and below
    CHECK(peaks.hogging.value == Approx(wanted.hogging.value).margin(1e-12 * scale));
    CHECK(peaks.down.value == Approx(wanted.down.value).margin(1e-11 * size));
    for (int k = 0; k <= 50; ++k) {
      const double x = k == 50 ? beam.ends.hi : beam.ends.lo + beam.ends.length() * k / 50.0;
      CHECK(influence.moment(x, loads) == Approx(moment_at(solution, x)).margin(1e-12 * scale));
      CHECK(influence.deflection(x, loads) == Approx(deflection_at(solution, x)).margin(1e-11 * size));
    }
  }
}

TEST_CASE("influence: peaks that are already higher stay", "[loads]") {
  const Beam beam{{0.0, 1.0, 2.0, 3.0}, {0.0, 3.0}, 1000.0, {{{0.0, 3.0}, 10.0}}};
  const std::vector<PointLoad> loads{{0.4, 100.0}};
  BeamPeaks peaks;
  peaks.sagging = {1e6, 0.123};
  Influence(beam).raise_peaks(loads, peaks);
  CHECK(peaks.sagging.value == 1e6);
  CHECK(peaks.sagging.at == 0.123);
  CHECK(peaks.hogging.value == Approx(beam_peaks(solve_beam(beam, loads)).hogging.value));
  CHECK_THROWS_AS(Influence(Beam{{0.0}, {0.0, 1.0}, 1.0, {}}), std::invalid_argument);
}

TEST_CASE("moving load: reactions and moments at a place are those of a fine scan, and exact", "[loads]") {
  Random random(33);
  for (int draw = 0; draw < 20; ++draw) {
    const Beam beam = random_beam(random, std::uniform_int_distribution<int>(2, 6)(random));
    const Influence influence(beam);
    const double apart = std::min(0.5, 0.5 * beam.ends.length());
    const std::vector<PointLoad> group{{-0.5 * apart, uniform(random, 100.0, 900.0)}, {0.5 * apart, 500.0}};
    const double inset = 0.5 * apart + 1e-9;  // rounding must not take a load off the beam
    const Interval travel{beam.ends.lo + inset, beam.ends.hi - inset};
    const double at = uniform(random, beam.ends.lo, beam.ends.hi);
    const MovingMoments exact = moving_moments(influence, group, travel, at);
    const MovingPeaks peaks = moving_peaks(influence, group, travel);
    MovingMoments scanned;
    std::vector<double> press(beam.supports.size(), 0.0), hold = press;
    for (int k = 0; k <= 4000; ++k) {
      const auto solution = solve_beam(beam, group_at(group, travel.lo + travel.length() * k / 4000.0));
      scanned.sagging.value = std::max(scanned.sagging.value, moment_at(solution, at));
      scanned.hogging.value = std::max(scanned.hogging.value, -moment_at(solution, at));
      for (std::size_t i = 0; i < press.size(); ++i) {
        press[i] = std::max(press[i], solution.reactions[i]);
        hold[i] = std::max(hold[i], -solution.reactions[i]);
      }
    }
    const double scale = size_of(beam, group), rounding = 1e-12 * scale;
    const double step = travel.length() / 4000.0 * scale;  // a moment changes by at most the loads times the step
    CHECK(scanned.sagging.value <= exact.sagging.value + rounding);
    CHECK(scanned.hogging.value <= exact.hogging.value + rounding);
    CHECK(exact.sagging.value <= scanned.sagging.value + step);
    CHECK(exact.hogging.value <= scanned.hogging.value + step);
    for (std::size_t i = 0; i < press.size(); ++i) {
      CHECK(press[i] <= peaks.press[i].value + rounding);
      CHECK(hold[i] <= peaks.hold[i].value + rounding);
      CHECK(peaks.press[i].value <= press[i] + 20 * step);  // spans down to 0.2 m make reactions change faster
      CHECK(peaks.hold[i].value <= hold[i] + 20 * step);
    }
    for (const MovingPeak* peak : {&exact.sagging, &exact.hogging}) {
      if (!(peak->value > 0.0)) continue;
      const double there = moment_at(solve_beam(beam, group_at(group, peak->position)), at);
      CHECK(std::abs(there) == Approx(peak->value).margin(rounding));
    }
  }
}

// Under one load the peaks over supports are the theorem of three moments' own, at every place of its way.
TEST_CASE("moving load: moments over supports are Clapeyron's while the load moves", "[loads]") {
  Random random(34);
  for (int draw = 0; draw < 10; ++draw) {
    const Beam beam = random_beam(random, 5);
    const Influence influence(beam);
    for (int k = 0; k <= 40; ++k) {
      const std::vector<PointLoad> load{{k == 40 ? beam.ends.hi : beam.ends.lo + beam.ends.length() * k / 40.0, 800.0}};
      const auto clapeyron = testing::three_moments_overhung(beam, load);
      for (std::size_t i = 0; i < clapeyron.size(); ++i)
        CHECK(influence.moment(beam.supports[i], load) == Approx(clapeyron[i]).margin(1e-11 * size_of(beam, load)));
    }
  }
}
