#include "sim/loads/hinged_pipe.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/loads/moving_load.h"

namespace stowpath {

namespace {

// One span by itself, with its own weight.
Beam simple_span(const Beam& beam, Interval span) {
  return {{span.lo, span.hi}, span, beam.stiffness, {{span, beam.spread.front().per_length}}};
}

std::vector<PointLoad> loads_on(Interval span, std::span<const PointLoad> group, double position) {
  std::vector<PointLoad> some;
  for (const PointLoad& load : group_at(group, position))
    if (span.contains(load.at)) some.push_back(load);
  return some;
}

// Positions where a load enters or leaves the span, and the travel's ends.
std::vector<double> breaks_of(Interval span, std::span<const PointLoad> group, Interval travel) {
  std::vector<double> breaks{travel.lo, travel.hi};
  for (const PointLoad& load : group)
    for (const double end : {span.lo, span.hi})
      if (travel.contains(end - load.at)) breaks.push_back(end - load.at);
  std::sort(breaks.begin(), breaks.end());
  return breaks;
}

// Of a square through values at both ends and the middle: its top's place between them, 0 to 1.
double top_of(double first, double middle, double last) {
  const double bend = first - 2 * middle + last;
  return bend < 0.0 ? std::clamp(0.5 + (first - last) / (4 * bend), 0.0, 1.0) : 0.0;
}

// Under the load whose distance from the group's zero is `offset`, over positions where the same loads are on the span.
double moment_under(const Beam& span, std::span<const PointLoad> group, Interval positions, double offset) {
  const auto moment = [&](double u) {
    const double position = positions.lo + u * positions.length();
    const std::vector<PointLoad> loads = loads_on(span.ends, group, position);
    return moment_at(solve_beam(span, loads), position + offset);
  };
  return moment(top_of(moment(0.0), moment(0.5), moment(1.0)));
}

double span_moment(const Beam& span, std::span<const PointLoad> group, Interval travel) {
  const std::vector<double> breaks = breaks_of(span.ends, group, travel);
  double most = 0.0;
  for (std::size_t i = 0; i < breaks.size(); ++i) {
    most = std::max(most, beam_peaks(solve_beam(span, loads_on(span.ends, group, breaks[i]))).sagging.value);
    if (i + 1 == breaks.size()) continue;
    const Interval between{breaks[i], breaks[i + 1]};
    for (const PointLoad& load : group)
      if (span.ends.contains(between.middle() + load.at))
        most = std::max(most, moment_under(span, group, between, load.at));
  }
  return most;
}

// An overhang's own weight and its loads about the support it runs out from: greatest at an end of the travel, since
// an arm that is cut off at zero is convex in the position.
double overhang_moment(const Beam& beam, Interval overhang, double root, std::span<const PointLoad> group,
                       Interval travel) {
  double most = 0.0;
  for (const double position : {travel.lo, travel.hi}) {
    double moment = 0.5 * beam.spread.front().per_length * overhang.length() * overhang.length();
    for (const PointLoad& load : loads_on(overhang, group, position)) moment += load.force * std::abs(load.at - root);
    most = std::max(most, moment);
  }
  return most;
}

}  // namespace

double hinged_moment(const Beam& beam, std::span<const PointLoad> group, Interval travel) {
  const std::vector<double>& supports = beam.supports;
  double most = std::max(overhang_moment(beam, {beam.ends.lo, supports.front()}, supports.front(), group, travel),
                         overhang_moment(beam, {supports.back(), beam.ends.hi}, supports.back(), group, travel));
  for (std::size_t i = 0; i + 1 < supports.size(); ++i)
    most = std::max(most, span_moment(simple_span(beam, {supports[i], supports[i + 1]}), group, travel));
  return most;
}

}  // namespace stowpath
