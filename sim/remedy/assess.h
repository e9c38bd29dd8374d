#pragma once

#include "sim/clearance/dry_fit.h"
#include "sim/mechanism/model.h"
#include "sim/scene/scene.h"

namespace stowpath {

struct AssessOptions {
  bool sagged = false;  ///< with the pipe bent under a person
  DryFitOptions fit;
};

/// Everything that the main job says of a scene.
struct Assessment {
  Model model;  ///< as it was proven
  DryFit fit;
};

/// Puts the scene together and proves it.
/// @throws SceneError where the stair cannot stand or the procedure is out of order; std::invalid_argument for `sagged`
///         on fewer than two brackets.
Assessment assess(const Scene& scene, const AssessOptions& options = {});

}  // namespace stowpath
