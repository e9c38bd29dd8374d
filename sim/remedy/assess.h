#pragma once

#include "sim/clearance/dry_fit.h"
#include "sim/hoist/seat.h"
#include "sim/mechanism/model.h"
#include "sim/scene/scene.h"

namespace stowpath {

struct AssessOptions {
  bool sagged = false;  ///< with the pipe bent under a person
  DryFitOptions fit;
  bool seat = true;  ///< see whether the hooks stay on, and count with the play that this gives them
  SeatOptions seated{};
};

/// Everything that the main job says of a scene.
struct Assessment {
  Model model;  ///< as it was proven
  DryFit fit;
  SeatReport seat;  ///< empty where it was not asked for
};

/// Puts the scene together, sees how the hooks bear on the pipe, and proves it with the play that they have there.
/// @throws SceneError where the stair cannot stand or the procedure is out of order; std::invalid_argument for `sagged`
///         on fewer than two brackets.
Assessment assess(const Scene& scene, const AssessOptions& options = {});

/// The same of a scene that is put together already. @param model  as build_model gives it for the scene
Assessment assess(const Scene& scene, Model model, const AssessOptions& options = {});

}  // namespace stowpath
