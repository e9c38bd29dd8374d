#pragma once

#include <span>
#include <vector>

#include "sim/rehearsal/side_world.h"

namespace stowpath {

class WorldContacts;

/// How finely a step of the side world has to be cut, so that no two parts pass through each other unseen.
///
/// The engine looks at its parts once a step. Between two looks a pair comes nearer by no more than half the way that
/// it goes, one seen from the other, and parts again: an overlap deeper than the world's skin cannot stay unseen where
/// that way is at most two skins. And where it is at most a quarter of both parts' thickness together, the engine,
/// which pushes the shorter way out, pushes them back to where they came from.
class StepCut {
 public:
  /// Both must outlive it.
  StepCut(const std::vector<WorldPart>& parts, const WorldContacts& contacts);

  /// @param motions  by section, as they will be through the step
  /// @returns 1 for a whole step, more for as many equal slices
  int slices(const SectionPoses& X_W, std::span<const SectionMotion> motions, double step) const;

 private:
  struct PairWay {
    int a = 0, b = 0;       // which of the parts; `a` is the smaller of the two
    double most = 0.0;      // way from one look to the next [m]
    bool off_pipe = false;  // they meet only once the hooks are off it
  };
  bool apart(const PairWay& pair) const;
  double way(const PairWay& pair, const SectionPoses& X_W, std::span<const SectionMotion> motions, double step) const;

  const std::vector<WorldPart>& parts_;
  const WorldContacts& contacts_;
  std::vector<PairWay> pairs_;
  double least_ = 0.0, reach_ = 0.0;  // of the pairs' ways; of the stair's parts from their section's origin [m]
};

}  // namespace stowpath
