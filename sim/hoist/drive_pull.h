#pragma once

#include <optional>
#include <string>

#include "sim/scene/scene.h"
#include "sim/trade/source.h"

namespace stowpath {

/// The most that whoever or whatever hauls pulls at the line when the stair catches and does not follow.
struct DrivePull {
  double force = 0.0;            ///< at the hand, cleat or drum [N]
  bool known = false;            ///< false: it may pull harder than `force`, how hard is not said
  bool limited = false;          ///< by the overload device
  std::string how;               ///< "the strongest published pull that fits", ...
  std::optional<Source> source;  ///< none for the user's own figures
};

/// By hand the greatest published pull that fits how the line comes to the hand; at a crank the greatest published
/// force through gear and drum, which lose as little as they may, from the bare drum; of a motor the stall that the
/// scene states. Its torque at a speed is no more than a lower bound of that. Nothing pulls harder than the overload
/// device lets through.
/// @pre the scene has a hoist
DrivePull drive_pull(const Scene& scene);

/// The same of whoever pulls the fold line, by hand: no overload device is in it. [N]
double fold_line_snag();

}  // namespace stowpath
