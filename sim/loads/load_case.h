#pragma once

#include <string>
#include <vector>

#include "sim/scene/scene.h"
#include "sim/trade/source.h"

namespace stowpath {

/// One way in which a person loads the standing stair. A case more can only make an answer stricter: every piece is
/// looked at in all of them, and keeps its own worst.
struct LoadCase {
  std::string name;       ///< "one person", "stepping off the top"
  double mass = 0.0;      ///< that stands on the stair, any factor for footfalls in it [kg]
  double aside = 0.0;     ///< how far the foot may be from the stair's middle, either way [m]
  double beyond = 0.0;    ///< how far the body is beyond the tread, out from the loft [m]
  double push = 0.0;      ///< level, at the foot, outward as well as inward [N]
  bool top_only = false;  ///< on the highest place alone
  bool ultimate = false;  ///< held against what breaks a piece, not against what it may carry for good
  Source source;
};

/// Every case that the standing stair is looked at in: the concentrated load of the codes, a person who climbs, steps
/// off with a push or leans out, and the load that must not break it.
std::vector<LoadCase> load_cases(const Climber& climber);

}  // namespace stowpath
