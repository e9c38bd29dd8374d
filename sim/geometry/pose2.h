#pragma once

#include <cmath>

#include "sim/geometry/vec2.h"

namespace stowpath {

/// Where a body's frame B stands in a frame W: X_WB. Turns first, then shifts.
struct Pose2 {
  Vec2 p;          ///< origin of B seen from W [m]
  double c = 1.0;  ///< cosine of the turn from W's x to B's x
  double s = 0.0;  ///< sine of it

  constexpr Vec2 turn(Vec2 v_B) const { return {c * v_B.x - s * v_B.y, s * v_B.x + c * v_B.y}; }
  constexpr Vec2 turn_back(Vec2 v_W) const { return {c * v_W.x + s * v_W.y, c * v_W.y - s * v_W.x}; }
  /// p_WP = X_WB * p_BP
  friend constexpr Vec2 operator*(const Pose2& X_WB, Vec2 p_BP) { return X_WB.p + X_WB.turn(p_BP); }
  /// X_WC = X_WB * X_BC
  friend constexpr Pose2 operator*(const Pose2& X_WB, const Pose2& X_BC) {
    return {X_WB * X_BC.p, X_WB.c * X_BC.c - X_WB.s * X_BC.s, X_WB.s * X_BC.c + X_WB.c * X_BC.s};
  }
  constexpr Pose2 inverse() const { return {-turn_back(p), c, -s}; }
};

/// @param angle  turn from W's x axis to B's, counter-clockwise [rad]
inline Pose2 make_pose(Vec2 p_WB, double angle) { return {p_WB, std::cos(angle), std::sin(angle)}; }

}  // namespace stowpath
