#include "sim/hoist/rope_geometry.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stowpath {

namespace {

Vec3 place(const RopePoint& point, const SectionPoses& X_W, double station) {
  if (point.section >= 0) return {X_W[static_cast<std::size_t>(point.section)] * point.at, station + point.station};
  return {point.at, point.rolls ? station + point.station : point.station};
}

// Only a part of the line between ceiling point and pick ends at the spreader's block.
RopeSegment run(const Vec3& a, const Vec3& b, double shorter) {
  const Vec2 side = b.side - a.side;
  const double along = b.along_rail - a.along_rail;
  const double apart = std::hypot(side.x, side.y, along);
  if (apart == 0.0) return {};
  return {apart - shorter, {(1.0 / apart) * side, along / apart}};
}

void add(Vec3& to, double k, const Vec3& v) {
  to.side = to.side + k * v.side;
  to.along_rail += k * v.along_rail;
}

}  // namespace

std::vector<RopeSegment> rope_segments(const Rigging& rigging, const Linkage& linkage, const Configuration& pose) {
  return rope_segments(rigging, place_sections(linkage, pose), pose.station);
}

std::vector<RopeSegment> rope_segments(const Rigging& rigging, const SectionPoses& X_W, double station) {
  std::vector<RopeSegment> segments;
  for (std::size_t i = 0; i + 1 < rigging.points.size(); ++i) {
    const double shorter = static_cast<int>(i) < rigging.parts ? rigging.link : 0.0;
    segments.push_back(
        run(place(rigging.points[i], X_W, station), place(rigging.points[i + 1], X_W, station), shorter));
  }
  return segments;
}

double rope_length(const Rigging& rigging, const Linkage& linkage, const Configuration& pose) {
  const auto segments = rope_segments(rigging, linkage, pose);
  return std::accumulate(segments.begin(), segments.end(), 0.0,
                         [](double sum, const RopeSegment& segment) { return sum + segment.length; });
}

std::vector<Vec3> point_forces(const Rigging& rigging, const std::vector<RopeSegment>& segments,
                               const std::vector<double>& shares) {
  std::vector<Vec3> forces(rigging.points.size());
  for (std::size_t i = 0; i < segments.size(); ++i) {
    add(forces[i], shares[i], segments[i].pull);
    add(forces[i + 1], -shares[i], segments[i].pull);
  }
  return forces;
}

}  // namespace stowpath
