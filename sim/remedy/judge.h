#pragma once

#include <vector>

#include "sim/clearance/dry_fit.h"

namespace stowpath {

/// Whether two findings, of two dry fits of nearly the same scene, are of one matter: the same kind of part meets the
/// same thing. Of broken building rules: the rule is about the same parts.
bool same_matter(const Finding& a, const Finding& b);

/// How much some distance that the finding is about has to change at least for it to go [m]. What play takes besides
/// depends on the pose and is not counted; rules of building and the hooks' seat are about no distance: 0.
double lacking_of(const Finding& finding);

/// What a change did to a scene's findings.
struct Judgement {
  bool cured = false;                   ///< the target is gone
  std::vector<const Finding*> against;  ///< of the changed scene: the target where it is left, what is new or worse
  double lacking = 0.0;  ///< by at least this much some distance has to change before it can all be well [m]

  bool well() const { return cured && against.empty(); }
};

/// Compares a changed scene with the one that it came from. Nothing may be new. What was there before is worse if its
/// kind is graver, it lacks more of its margin (by over 0.15 mm, as each is known to 0.1 mm), it happens in further
/// moves or meets more of the room's like things.
Judgement judge(const std::vector<Finding>& before, const std::vector<Finding>& after, const Finding& target);

}  // namespace stowpath
