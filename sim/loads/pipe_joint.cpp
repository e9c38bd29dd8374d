#include "sim/loads/pipe_joint.h"

#include <algorithm>
#include <vector>

#include "sim/trade/pipe.h"

namespace stowpath {

namespace {

// Where the pipe is looked at: at both ends of a coupling, as far as the pipe goes.
std::vector<double> faces(const PipeJoint& joint, JointKind kind, Interval pipe) {
  if (kind == JointKind::flush) return {joint.station};
  return {std::clamp(joint.station - 0.5 * joint.length, pipe.lo, pipe.hi),
          std::clamp(joint.station + 0.5 * joint.length, pipe.lo, pipe.hi)};
}

void raise(MovingPeak& peak, const MovingPeak& other) {
  if (other.value > peak.value) peak = other;
}

std::optional<double> root_stress(const Pipe& pipe, double wall, double moment) {
  const std::optional<Section> root = threaded_section(pipe.diameter, wall);
  if (!root) return std::nullopt;
  return moment / root->modulus;
}

}  // namespace

JointPeak joint_peak(const Influence& influence, std::span<const PointLoad> group, Interval travel, const Pipe& pipe,
                     const PipeJoint& joint) {
  JointPeak peak;
  peak.station = joint.station;
  peak.kind = joint.diameter > pipe.diameter + kFlushJoint ? JointKind::coupling : JointKind::flush;
  peak.sagging = peak.hogging = {0.0, joint.station, travel.lo};
  for (const double at : faces(joint, peak.kind, influence.beam().ends)) {
    const MovingMoments moments = moving_moments(influence, group, travel, at);
    raise(peak.sagging, moments.sagging);
    raise(peak.hogging, moments.hogging);
  }
  const MovingPeak& worst = peak.hogging.value > peak.sagging.value ? peak.hogging : peak.sagging;
  peak.moment = worst.value;
  peak.at = worst.at;
  peak.position = worst.position;
  if (peak.kind == JointKind::flush) return peak;
  peak.stress = root_stress(pipe, pipe.wall, peak.moment);
  peak.design_stress = root_stress(pipe, kDesignWallFactor * pipe.wall, peak.moment);
  return peak;
}

}  // namespace stowpath
