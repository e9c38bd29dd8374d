#include "sim/hoist/motion.h"

#include <cmath>

#include "sim/hoist/rope_geometry.h"

namespace stowpath {

namespace {

LeanRates straight_rates(const Linkage& linkage, const Segment& segment) {
  const auto from = section_leans(linkage, segment.from), to = section_leans(linkage, segment.to);
  LeanRates rates{};
  for (std::size_t j = 0; j < rates.size(); ++j) rates[j] = to[j] - from[j];
  return rates;
}

// The axle keeps its height: hinge's rise + what the chain's turn adds to the axle = 0.
double dragged_rate(const Linkage& linkage, const Segment& segment, const SectionPoses& X_W, const LeanRates& upper) {
  const int hinge = segment.drag.hinge;
  const double rise = point_velocity(linkage, X_W, upper, hinge, linkage.distal(hinge)).y;
  const auto& X_WB = X_W[static_cast<std::size_t>(hinge + 1)];
  const double lever = X_WB.turn(segment.drag.axle - linkage.proximal(hinge + 1)).x;
  return -rise / lever;
}

Vec2 velocity_of(const RopePoint& point, const Linkage& linkage, const SectionPoses& X_W, const LeanRates& rates) {
  return point.section < 0 ? Vec2{} : point_velocity(linkage, X_W, rates, point.section, point.at);
}

}  // namespace

LeanRates lean_rates(const Linkage& linkage, const Segment& segment, double u) {
  if (segment.kind == SegmentKind::straight) return straight_rates(linkage, segment);
  LeanRates rates{};
  const auto below = static_cast<std::size_t>(segment.drag.hinge + 1);
  for (std::size_t j = 0; j < below; ++j) rates[j] = segment.to.lean - segment.from.lean;
  const double rate = dragged_rate(linkage, segment, place_sections(linkage, at(linkage, segment, u)), rates);
  for (std::size_t j = below; j < static_cast<std::size_t>(linkage.sections); ++j) rates[j] = rate;
  return rates;
}

Vec2 point_velocity(const Linkage& linkage, const SectionPoses& X_W, const LeanRates& rates, int section, Vec2 at) {
  Vec2 velocity;
  for (int j = 0; j <= section; ++j) {
    const auto k = static_cast<std::size_t>(j);
    const Vec2 end = j == section ? at : linkage.distal(j);
    velocity = velocity + rates[k] * quarter_turn(X_W[k].turn(end - linkage.proximal(j)));
  }
  return velocity;
}

std::vector<double> segment_rates(const Rigging& rigging, const Linkage& linkage, const Configuration& pose,
                                  const LeanRates& rates) {
  const SectionPoses X_W = place_sections(linkage, pose);
  const auto segments = rope_segments(rigging, linkage, pose);
  std::vector<double> growth;
  for (std::size_t i = 0; i < segments.size(); ++i) {
    const Vec2 apart =
        velocity_of(rigging.points[i + 1], linkage, X_W, rates) - velocity_of(rigging.points[i], linkage, X_W, rates);
    growth.push_back(dot(segments[i].pull.side, apart));
  }
  return growth;
}

}  // namespace stowpath
