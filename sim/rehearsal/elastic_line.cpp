#include "sim/rehearsal/elastic_line.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/hoist/rope_geometry.h"

namespace stowpath {

namespace {

constexpr double kStiffnessOverStrength = 7.0;
constexpr double kStrengthOfArea = 160e6;  // [N/m2]

Vec2 velocity_of(const RopePoint& point, const SideWorld& world) {
  return point.section < 0 ? Vec2{} : world.point_velocity(point.section, point.at);
}

double growth(const Rigging& rigging, const std::vector<RopeSegment>& segments, const SideWorld& world) {
  double rate = 0.0;
  for (std::size_t i = 0; i < segments.size(); ++i)
    rate +=
        dot(segments[i].pull.side, velocity_of(rigging.points[i + 1], world) - velocity_of(rigging.points[i], world));
  return rate;
}

// Shares between those at rest and those of a rope that runs.
std::vector<double> running_shares(const ElasticLine& line, double hauled_speed) {
  const double full = std::clamp(hauled_speed / line.slip_speed, -1.0, 1.0);
  std::vector<double> shares = tension_shares(line.rigging, full >= 0.0 ? Haul::raising : Haul::lowering);
  for (double& share : shares) share = 1.0 + std::abs(full) * (share - 1.0);
  return shares;
}

}  // namespace

LinePull line_pull(const ElasticLine& line, const LineFeed& feed, const SideWorld& world, double station) {
  const auto segments = rope_segments(line.rigging, world.poses(), station);
  const std::vector<double> even(segments.size(), 1.0);
  const LineLoad unit = line_load(line.rigging, segments, even);
  const double stretching = growth(line.rigging, segments, world) - feed.speed;
  // The sheaves see what the hand hauls, less their share of what the rope stretches by.
  const std::vector<double> shares = running_shares(line, -feed.speed - 0.5 * stretching);
  LinePull pull;
  for (const RopeSegment& segment : segments) pull.length += segment.length;
  pull.stretch = pull.length - feed.paid;
  pull.stiffness = line.stiffness / (pull.length + line.fall);
  const double inverse_mass = world.inverse_mass(unit.per_unit);
  pull.swiftness = std::sqrt(pull.stiffness * inverse_mass);
  if (pull.stretch <= 0.0 || inverse_mass <= 0.0) return pull;
  const double damping = 2.0 * line.damping * std::sqrt(pull.stiffness / inverse_mass);
  pull.hand = std::max(0.0, pull.stiffness * pull.stretch + damping * stretching);
  pull.loads = line_load(line.rigging, segments, shares).per_unit;
  for (SectionLoad& load : pull.loads) load.force = pull.hand * load.force;
  return pull;
}

double rope_stiffness(double diameter, double strength) {
  const double area = 0.25 * std::numbers::pi * diameter * diameter;
  return kStiffnessOverStrength * (strength > 0.0 ? strength : kStrengthOfArea * area);
}

}  // namespace stowpath
