#pragma once

#include "sim/remedy/remedies.h"

namespace stowpath {

/// What the hoist line asks for over a whole lift, to compare riggings by; zeros without a line.
struct LiftSummary {
  double peak = 0.0;  ///< greatest pull at the hand, raising [N]
  int troubles = 0;   ///< times that hauling no longer raises the stair, the line goes slack or the hooks lift
};
LiftSummary lift_summary(const Scene& scene, const Model& model);

/// Fills in what a remedy gives and what it costs elsewhere, from the scene before and after.
void tell_price(const Assessment& before, const Scene& changed, const Assessment& after, const Finding& target,
                const AssessOptions& options, Remedy& remedy);

/// Tells the pull where it changes by 2 % or more.
void tell_pull(const LiftSummary& before, const LiftSummary& after, Remedy& remedy);

}  // namespace stowpath
