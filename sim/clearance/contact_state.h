#pragma once

#include <array>
#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Which contact rules count at a pose.
struct ContactState {
  bool hooked_on = false;
  bool foot_down = false;                        ///< see ContactTime::foot_down
  std::vector<bool> pinned;                      ///< by hinge
  std::array<bool, kMaxSections - 1> closed{};   ///< see ContactTime::closed, by hinge
  double rise = 0.0;  ///< the foot may stand so much deeper, as its lean is that of a higher pivot (see MoveSeat) [m]

  bool counts(const ContactRule& rule) const;
};

/// A piece of a segment over which the same contact rules count.
struct Stretch {
  Segment segment;
  Interval piece{0.0, 1.0};  ///< of the whole segment
  ContactState state;
};

/// The segment cut where the foot comes clear of the floor, or comes down to it: what the room's rules need.
std::vector<Stretch> room_stretches(const Model& model, const Move& move, const Segment& segment);

/// The segment cut where the ends butted at the hinge beyond `base` have parted. Stations are those of the stair's own
/// frame: whatever is on it rides along.
std::vector<Stretch> section_stretches(const Model& model, const Move& move, const Segment& segment, int base);

/// The stretch that holds u.
const Stretch& stretch_at(const std::vector<Stretch>& stretches, double u);

/// A segment as it is seen from the stair itself.
Segment riding_along(Segment segment);

/// The stations of the stair's middle where a segment begins, as what stays in the room sees them.
Interval middles(const Segment& segment);

}  // namespace stowpath
