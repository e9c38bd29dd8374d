#include "sim/mechanism/linkage.h"

#include <cmath>

namespace stowpath {

namespace {

Pose2 hang_on(const Pose2& X_WA, Vec2 p_AH, Vec2 p_BH, double lean) {
  Pose2 X_WB{{}, std::sin(lean), -std::cos(lean)};  // the turn lean - pi/2, without losing digits to the subtraction
  X_WB.p = X_WA * p_AH - X_WB.turn(p_BH);
  return X_WB;
}

}  // namespace

std::array<double, kMaxSections> section_leans(const Linkage& linkage, const Configuration& at) {
  std::array<double, kMaxSections> leans{};
  leans[0] = at.lean;
  for (std::size_t k = 1; k < static_cast<std::size_t>(linkage.sections); ++k)
    leans[k] = leans[k - 1] + linkage.fold_sign[k - 1] * at.folds[k - 1];
  return leans;
}

SectionPoses place_sections(const Linkage& linkage, const Configuration& at) {
  const auto leans = section_leans(linkage, at);
  SectionPoses X_W;
  X_W[0] = hang_on({linkage.pivot}, {}, {}, leans[0]);
  for (int j = 1; j < linkage.sections; ++j) {
    const auto k = static_cast<std::size_t>(j);
    X_W[k] = hang_on(X_W[k - 1], linkage.distal(j - 1), linkage.proximal(j), leans[k]);
  }
  return X_W;
}

HingeSwing hinge_swing(const Linkage& linkage, const Configuration& folded, int hinge) {
  Configuration plumb = folded;
  plumb.lean = 0.0;
  const Vec2 arm =
      place_sections(linkage, plumb)[static_cast<std::size_t>(hinge)] * linkage.distal(hinge) - linkage.pivot;
  return {norm(arm), std::atan2(arm.x, -arm.y)};
}

}  // namespace stowpath
