#pragma once

#include <optional>

#include "sim/scene/scene.h"

namespace stowpath {

/// The most that whoever or whatever hauls can pull at the line when the stair does not follow: by hand, the greatest of
/// the published pulls; by a crank, the greatest published force on it through drum and gear, the first layer on the drum;
/// by a motor, its stated torque. No more than the scene's overload clutch lets through. None where it is not said [N].
std::optional<double> drive_pull(const Scene& scene);

}  // namespace stowpath
