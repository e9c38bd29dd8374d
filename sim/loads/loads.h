#pragma once

#include <string>

#include "sim/loads/framing.h"
#include "sim/loads/hardware.h"
#include "sim/loads/sag.h"

namespace stowpath {

/// Everything that `stowpath loads` tells.
struct LoadsReport {
  ClimberReport climber;
  PipeStrength pipe;
  std::vector<RailCase> rails;  ///< states of the pipe: a person's in several ways of sharing, then the hoist's
  PipeSag sag;
  std::vector<HardwareItem> hardware;  ///< weakest first
  std::vector<FramingLoad> framing;    ///< brackets on the loft and the ceiling point, among joists and trusses
  std::string rail_problem;            ///< why the pipe was not looked at; empty where it was
};

/// Of all states of the pipe the ones to show: with the greatest stress of those that only stand, push, break the stair
/// or hang on the line. In the list's order.
std::vector<RailCase> telling_rails(const std::vector<RailCase>& rails);

/// @param hoist  what the pull report found, or none: then the hoist's hardware is left out
LoadsReport look_at_loads(const Scene& scene, const Model& model, const std::optional<HoistLoads>& hoist);

}  // namespace stowpath
