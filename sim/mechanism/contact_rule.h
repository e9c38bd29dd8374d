#pragma once

#include <limits>
#include <string>
#include <vector>

#include "sim/geometry/vec2.h"

namespace stowpath {

/// When two things may touch.
enum class ContactTime {
  always,
  line_on,   ///< while the hoist line is hooked on
  pinned,    ///< while the rule's hinge is pinned
  closed,    ///< while the rule's hinge is folded by less than `kEndsPart`
  foot_down  ///< while the stair stands on its casters or drags its foot, and until the foot has come clear of the floor
};

/// A contact that is meant: which things may touch, why, when, where and how deep. Two things that no rule names keep
/// their margin; things that a rule names keep it too, but for here and then.
struct ContactRule {
  std::string why;          ///< "the hook hangs on the pipe"
  std::vector<int> a, b;    ///< ids: each of the one may touch each of the other
  ContactTime when = ContactTime::always;
  int hinge = -1;           ///< for ContactTime::pinned and closed, from 0
  int body = -1;            ///< the disc's: a section from 0; -1: the room
  Vec2 centre;              ///< of the disc beyond which the margin holds again, in that frame [m]
  double radius = std::numeric_limits<double>::infinity();  ///< infinite: anywhere, where `depth` says enough [m]
  double depth = 0.0;       ///< how far one may reach into the other; infinite: as far as it likes [m]

  bool names(int x, int y) const;
};

/// Butted ends have parted where a hinge is folded by more: 20 degrees [rad].
inline constexpr double kEndsPart = 0.3490658503988659;

}  // namespace stowpath
