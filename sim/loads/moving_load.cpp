#include "sim/loads/moving_load.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <stdexcept>

namespace stowpath {

namespace {

constexpr double kStepsPerSpan = 64.0;
constexpr int kGoldenSteps = 60;  // 0.618^60 of a step: far below where rounding hides a flat top

using Measure = std::function<BeamPeak(const BeamSolution&)>;

std::vector<Measure> measures(const Beam& beam) {
  std::vector<Measure> all{[](const BeamSolution& s) { return beam_peaks(s).sagging; },
                           [](const BeamSolution& s) { return beam_peaks(s).hogging; },
                           [](const BeamSolution& s) { return beam_peaks(s).down; }};
  for (const double way : {1.0, -1.0})
    for (std::size_t i = 0; i < beam.supports.size(); ++i)
      all.push_back([i, way, at = beam.supports[i]](const BeamSolution& s) {
        return BeamPeak{std::max(0.0, way * s.reactions[i]), at};
      });
  return all;
}

std::vector<double> places(const Beam& beam, Interval travel) {
  double shortest = beam.supports.back() - beam.supports.front();
  for (std::size_t i = 1; i < beam.supports.size(); ++i)
    shortest = std::min(shortest, beam.supports[i] - beam.supports[i - 1]);
  const int steps = static_cast<int>(std::ceil(std::min(20'000.0, kStepsPerSpan * travel.length() / shortest)));
  std::vector<double> out{travel.lo};
  for (int i = 1; i < steps; ++i) out.push_back(travel.lo + travel.length() * i / steps);
  if (steps > 0) out.push_back(travel.hi);
  return out;
}

MovingPeak look(const Beam& beam, std::span<const PointLoad> group, double position, const Measure& measure) {
  const BeamPeak peak = measure(solve_beam(beam, group_at(group, position)));
  return {peak.value, peak.at, position};
}

MovingPeak better(const MovingPeak& a, const MovingPeak& b) { return b.value > a.value ? b : a; }

MovingPeak refined(const Beam& beam, std::span<const PointLoad> group, Interval around, MovingPeak best,
                   const Measure& measure) {
  const double golden = 0.5 * (std::sqrt(5.0) - 1.0);
  MovingPeak left = look(beam, group, around.hi - golden * around.length(), measure);
  MovingPeak right = look(beam, group, around.lo + golden * around.length(), measure);
  for (int i = 0; i < kGoldenSteps; ++i) {
    best = better(better(best, left), right);
    if (left.value >= right.value) {
      around.hi = right.position;
      right = left;
      left = look(beam, group, around.hi - golden * around.length(), measure);
    } else {
      around.lo = left.position;
      left = right;
      right = look(beam, group, around.lo + golden * around.length(), measure);
    }
  }
  return best;
}

struct Scan {
  std::vector<double> places;
  std::vector<MovingPeak> best;     // by measure
  std::vector<std::size_t> best_i;  // by measure, into places
};

Scan scan(const Beam& beam, std::span<const PointLoad> group, Interval travel, const std::vector<Measure>& all) {
  Scan out{places(beam, travel), std::vector<MovingPeak>(all.size()), std::vector<std::size_t>(all.size())};
  for (std::size_t i = 0; i < out.places.size(); ++i) {
    const BeamSolution solution = solve_beam(beam, group_at(group, out.places[i]));
    for (std::size_t m = 0; m < all.size(); ++m) {
      const BeamPeak peak = all[m](solution);
      if (i > 0 && peak.value <= out.best[m].value) continue;
      out.best[m] = {peak.value, peak.at, out.places[i]};
      out.best_i[m] = i;
    }
  }
  return out;
}

Interval neighbours(const std::vector<double>& places, std::size_t i) {
  return {places[i > 0 ? i - 1 : 0], places[std::min(i + 1, places.size() - 1)]};
}

}  // namespace

std::vector<PointLoad> group_at(std::span<const PointLoad> group, double position) {
  std::vector<PointLoad> loads(group.begin(), group.end());
  for (PointLoad& load : loads) load.at += position;
  return loads;
}

MovingPeaks moving_peaks(const Beam& beam, std::span<const PointLoad> group, Interval travel) {
  if (travel.empty()) throw std::invalid_argument("moving_peaks: the load has nowhere to go");
  const std::vector<Measure> all = measures(beam);
  Scan found = scan(beam, group, travel, all);
  for (std::size_t m = 0; m < all.size(); ++m)
    if (found.best[m].value > 0.0)
      found.best[m] = refined(beam, group, neighbours(found.places, found.best_i[m]), found.best[m], all[m]);
  const auto reactions = found.best.begin() + 3;
  const auto count = static_cast<std::ptrdiff_t>(beam.supports.size());
  return {found.best[0],
          found.best[1],
          found.best[2],
          {reactions, reactions + count},
          {reactions + count, found.best.end()}};
}

}  // namespace stowpath
