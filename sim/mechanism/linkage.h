#pragma once

#include <array>
#include <cstddef>

#include "sim/geometry/pose2.h"
#include "sim/geometry/vec2.h"

namespace stowpath {

inline constexpr int kMaxSections = 3;

/// The stair's joints in the side view.
///
/// A section's frame: x along the datum line from its proximal joint's end towards the foot, y across to the climber's
/// side. At lean 0 x points straight down and y out from the back wall; the frame's turn in the room is lean - pi/2.
/// Straight, all sections share the datum line, which runs through the pivot.
struct Linkage {
  Vec2 pivot;        ///< nominal centre of the hooks' circle: out, up [m]
  int sections = 1;
  std::array<double, kMaxSections> length{};             ///< along, proximal joint to the next joint or the foot [m]
  std::array<double, kMaxSections - 1> hinge_across{};   ///< axis of hinge k, across, in both of its sections' frames [m]
  std::array<double, kMaxSections - 1> fold_sign{};      ///< lean of section k+1 = lean of k + fold_sign * fold k; -1 back, +1 front

  /// The joint that section j (from 0) turns about, in its own frame [m].
  Vec2 proximal(int j) const { return j == 0 ? Vec2{} : Vec2{0.0, hinge_across[static_cast<std::size_t>(j - 1)]}; }
  /// The hinge that section j carries towards the foot, in its own frame [m].
  Vec2 distal(int j) const {
    return {length[static_cast<std::size_t>(j)], hinge_across[static_cast<std::size_t>(j)]};
  }
};

/// Where the stair is: the pose of design's words.
struct Configuration {
  double station = 0.0;                            ///< middle of the stair's width along the rail [m]
  double lean = 0.0;                               ///< of section 1 from plumb [rad]
  std::array<double, kMaxSections - 1> folds{};    ///< [rad]
};

/// Placements of all sections in the side view: X_W for section 0, 1, 2 (unused ones stay identity).
using SectionPoses = std::array<Pose2, kMaxSections>;
SectionPoses place_sections(const Linkage& linkage, const Configuration& at);

/// Lean of each section [rad].
std::array<double, kMaxSections> section_leans(const Linkage& linkage, const Configuration& at);

/// How hinge `hinge` (from 0) swings about the pivot while the folds above it stay: at a lean it stands
/// reach * sin(lean + phase) out of the pivot and reach * cos(lean + phase) below it.
struct HingeSwing {
  double reach = 0.0;  ///< pivot to hinge [m]
  double phase = 0.0;  ///< [rad]
};
HingeSwing hinge_swing(const Linkage& linkage, const Configuration& folded, int hinge);

}  // namespace stowpath
