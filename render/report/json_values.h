#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "sim/mechanism/model.h"

namespace stowpath {

// What the reports' JSON writers share. Keys stand in the order they are added.

using Json = nlohmann::ordered_json;

/// A number, or null where it is not finite, or not there.
Json json_number(double value);
Json json_number(const std::optional<double>& value);
Json json_degrees(double radians);
Json json_stretches(const IntervalSet& set);

/// {"lean_deg": ..., "folds_deg": [...]}
Json json_pose(const Linkage& linkage, const Configuration& at);
/// The same after "station_m".
Json json_placed_pose(const Linkage& linkage, const Configuration& at);

/// "stand", "roll", "lift", ...
std::string_view json_move(MoveKind kind);

/// As printed: indented by two, ended, bad UTF-8 replaced.
std::string dumped(const Json& json);

}  // namespace stowpath
