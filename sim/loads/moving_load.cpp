#include "sim/loads/moving_load.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <stdexcept>

namespace stowpath {

namespace {

constexpr double kStepsPerSpan = 64.0;
constexpr int kGoldenSteps = 60;  // 0.618^60 of a step: far below where rounding hides a flat top

using Measure = BeamPeak BeamPeaks::*;
constexpr std::array<Measure, 3> kMeasures{&BeamPeaks::sagging, &BeamPeaks::hogging, &BeamPeaks::down};

// Solves once at either end of the travel, for solve_beam's own refusals.
void check(const Beam& beam, std::span<const PointLoad> group, Interval travel) {
  if (travel.empty()) throw std::invalid_argument("moving_peaks: the load has nowhere to go");
  for (const double position : {travel.lo, travel.hi}) solve_beam(beam, group_at(group, position));
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

MovingPeak look(const Influence& influence, std::span<const PointLoad> group, double position, Measure measure) {
  BeamPeaks peaks;
  influence.raise_peaks(group_at(group, position), peaks);
  return {(peaks.*measure).value, (peaks.*measure).at, position};
}

MovingPeak better(const MovingPeak& a, const MovingPeak& b) { return b.value > a.value ? b : a; }

MovingPeak refined(const Influence& influence, std::span<const PointLoad> group, Interval around, MovingPeak best,
                   Measure measure) {
  const double golden = 0.5 * (std::sqrt(5.0) - 1.0);
  MovingPeak left = look(influence, group, around.hi - golden * around.length(), measure);
  MovingPeak right = look(influence, group, around.lo + golden * around.length(), measure);
  for (int i = 0; i < kGoldenSteps; ++i) {
    best = better(better(best, left), right);
    if (left.value >= right.value) {
      around.hi = right.position;
      right = left;
      left = look(influence, group, around.hi - golden * around.length(), measure);
    } else {
      around.lo = left.position;
      left = right;
      right = look(influence, group, around.lo + golden * around.length(), measure);
    }
  }
  return best;
}

// The best steps of the travel, by measure.
struct Scan {
  std::vector<double> places;
  std::array<MovingPeak, 3> best{};
  std::array<std::size_t, 3> best_i{};  // into places
};

// Every place starts from the best so far, so that most spans of most places are passed over.
Scan scan(const Influence& influence, std::span<const PointLoad> group, Interval travel) {
  Scan out{places(influence.beam(), travel)};
  BeamPeaks peaks;
  for (std::size_t i = 0; i < out.places.size(); ++i) {
    const BeamPeaks before = peaks;
    influence.raise_peaks(group_at(group, out.places[i]), peaks);
    for (std::size_t m = 0; m < kMeasures.size(); ++m) {
      const BeamPeak &now = peaks.*kMeasures[m], &then = before.*kMeasures[m];
      if (i > 0 && now.value <= then.value) continue;
      out.best[m] = {now.value, now.at, out.places[i]};
      out.best_i[m] = i;
    }
  }
  return out;
}

Interval neighbours(const std::vector<double>& places, std::size_t i) {
  return {places[i > 0 ? i - 1 : 0], places[std::min(i + 1, places.size() - 1)]};
}

// Where a load of the group passes one of these places, and the travel's ends.
std::vector<double> breaks_of(std::span<const PointLoad> group, Interval travel, std::span<const double> passed) {
  std::vector<double> breaks{travel.lo, travel.hi};
  for (const PointLoad& load : group)
    for (const double place : passed)
      if (const double position = place - load.at; position > travel.lo && position < travel.hi)
        breaks.push_back(position);
  std::sort(breaks.begin(), breaks.end());
  return breaks;
}

// Where a cubic through these values at 0, 1/3, 2/3 and 1 is level; a place beyond 0 to 1 is put at its end.
std::array<double, 2> level_places(const std::array<double, 4>& y) {
  const double a = 4.5 * (y[3] - 3 * y[2] + 3 * y[1] - y[0]), b = 4.5 * (2 * y[0] - 5 * y[1] + 4 * y[2] - y[3]);
  const double c = -5.5 * y[0] + 9 * y[1] - 4.5 * y[2] + y[3];  // a u^3 + b u^2 + c u + y[0]
  const double root = std::sqrt(std::max(0.0, b * b - 3 * a * c)), q = -(b + (b < 0.0 ? -root : root));
  const auto inside = [](double u) { return std::isfinite(u) ? std::clamp(u, 0.0, 1.0) : 0.0; };
  return {inside(q / (3 * a)), inside(c / q)};
}

using OfPosition = std::function<double(double)>;

// The greatest value of a function that is a cubic between each two breaks, and the greatest of its negative.
struct BothSigns {
  MovingPeak most, least;
};

BothSigns cubic_peaks(const OfPosition& value_at, const std::vector<double>& breaks, double at) {
  BothSigns peaks{{0.0, at, breaks.front()}, {0.0, at, breaks.front()}};
  const auto raise = [&](double position, double value) {
    peaks.most = better(peaks.most, {value, at, position});
    peaks.least = better(peaks.least, {-value, at, position});
  };
  double first = value_at(breaks.front());
  raise(breaks.front(), first);
  for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
    const double lo = breaks[i], length = breaks[i + 1] - lo;
    const std::array<double, 4> y{first, value_at(lo + length / 3), value_at(lo + length * 2 / 3),
                                  value_at(breaks[i + 1])};
    for (const double u : level_places(y))
      if (u > 0.0 && u < 1.0) raise(lo + u * length, value_at(lo + u * length));
    raise(breaks[i + 1], y[3]);
    first = y[3];
  }
  return peaks;
}

void add_reactions(const Influence& influence, std::span<const PointLoad> group, Interval travel, MovingPeaks& peaks) {
  const std::vector<double>& supports = influence.beam().supports;
  const std::vector<double> breaks = breaks_of(group, travel, supports);
  for (std::size_t i = 0; i < supports.size(); ++i) {
    const auto reaction = [&](double position) { return influence.reaction(i, group_at(group, position)); };
    const BothSigns both = cubic_peaks(reaction, breaks, supports[i]);
    peaks.press.push_back(both.most);
    peaks.hold.push_back(both.least);
  }
}

}  // namespace

std::vector<PointLoad> group_at(std::span<const PointLoad> group, double position) {
  std::vector<PointLoad> loads(group.begin(), group.end());
  for (PointLoad& load : loads) load.at += position;
  return loads;
}

MovingPeaks moving_peaks(const Influence& influence, std::span<const PointLoad> group, Interval travel) {
  check(influence.beam(), group, travel);
  Scan found = scan(influence, group, travel);
  for (std::size_t m = 0; m < kMeasures.size(); ++m)
    if (found.best[m].value > 0.0)
      found.best[m] = refined(influence, group, neighbours(found.places, found.best_i[m]), found.best[m], kMeasures[m]);
  MovingPeaks peaks{found.best[0], found.best[1], found.best[2], {}, {}};
  add_reactions(influence, group, travel, peaks);
  return peaks;
}

MovingPeaks moving_peaks(const Beam& beam, std::span<const PointLoad> group, Interval travel) {
  return moving_peaks(Influence(beam), group, travel);
}

MovingMoments moving_moments(const Influence& influence, std::span<const PointLoad> group, Interval travel, double at) {
  check(influence.beam(), group, travel);
  if (!influence.beam().ends.contains(at)) throw std::invalid_argument("moving_moments: the place is off the beam");
  std::vector<double> passed = influence.beam().supports;
  passed.push_back(at);
  const auto moment = [&](double position) { return influence.moment(at, group_at(group, position)); };
  const BothSigns both = cubic_peaks(moment, breaks_of(group, travel, passed), at);
  return {both.most, both.least};
}

}  // namespace stowpath
