#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/loads/hardware.h"

namespace stowpath {

/// Where one state's items of the stair are gathered.
struct StairItems {
  const HardwareInputs& inputs;
  std::vector<HardwareItem>& items;
  std::string where;     ///< the state
  double dynamic = 1.0;  ///< its factor, which every load takes
  std::optional<double> lean{};  ///< of section 1 from plumb; none: any, and the worst is taken [rad]

  const Scene& scene() const { return inputs.scene; }

  HardwareItem& add(const std::string& name, LoadKind kind, double load);
  HardwareItem& add_wood(const std::string& name, double stress, double allowed, const std::string& what);
  HardwareItem& add_rated(const std::string& name, double load, std::initializer_list<std::string_view> names);
  HardwareItem& add_steel(const std::string& name, LoadKind kind, double load, double resistance,
                          const std::string& basis);
};

/// One hook under the pipe's force on it: out, up [N].
/// @param along  what would push it along the rail; no more than friction holds acts on it [N]
void add_hook(StairItems& to, Vec2 force, double along);

/// One end of a tread under a force on it, straight down.
void add_tread_fixing(StairItems& to, double force);

}  // namespace stowpath
