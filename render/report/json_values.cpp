#include "render/report/json_values.h"

#include <cmath>
#include <numbers>

#include "render/report/words.h"

namespace stowpath {

Json json_number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json json_number(const std::optional<double>& value) { return value ? json_number(*value) : Json(nullptr); }

Json json_degrees(double radians) { return json_number(radians * 180.0 / std::numbers::pi); }

Json json_stretches(const IntervalSet& set) {
  Json out = Json::array();
  for (const Interval& stretch : set) out.push_back({json_number(stretch.lo), json_number(stretch.hi)});
  return out;
}

Json json_pose(const Linkage& linkage, const Configuration& at) {
  Json folds = Json::array();
  for (int k = 0; k + 1 < linkage.sections; ++k)
    folds.push_back(json_degrees(at.folds.at(static_cast<std::size_t>(k))));
  return {{"lean_deg", json_degrees(at.lean)}, {"folds_deg", folds}};
}

Json json_placed_pose(const Linkage& linkage, const Configuration& at) {
  Json out{{"station_m", json_number(at.station)}};
  out.update(json_pose(linkage, at));
  return out;
}

std::string_view json_move(MoveKind kind) {
  if (kind == MoveKind::stand) return "stand";
  return kind == MoveKind::park ? "park" : move_name(kind);
}

std::string dumped(const Json& json) { return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n"; }

}  // namespace stowpath
