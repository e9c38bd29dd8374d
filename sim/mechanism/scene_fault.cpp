#include "sim/mechanism/scene_fault.h"

#include <stdexcept>

#include "sim/trade/length.h"

namespace stowpath {

SourcePos find_place(const Scene& scene, std::string key) {
  while (!key.empty()) {
    if (const auto found = scene.where.find(key); found != scene.where.end()) return found->second;
    const std::size_t end = key.find_last_of(".[");
    key.erase(end == std::string::npos ? 0 : end);
  }
  return {};
}

void refuse(const Scene& scene, const std::string& key, const std::string& problem, const std::string& hint) {
  throw SceneError(scene.file, {{find_place(scene, key), key, problem, hint}});
}

RoundedPolygon outline_of(const Scene& scene, const std::string& key, const std::vector<Vec2>& corners, double radius) {
  try {
    return make_rounded_polygon(corners, radius);
  } catch (const std::invalid_argument& wrong) {
    refuse(scene, key, wrong.what(), "give the corners of a convex outline, counter-clockwise");
  }
}

std::string say_length(const Scene& scene, double metres) {
  const bool inches = scene.units == FileUnits::inches;
  return format_length(metres, inches ? DisplayUnits::imperial : DisplayUnits::metric);
}

}  // namespace stowpath
