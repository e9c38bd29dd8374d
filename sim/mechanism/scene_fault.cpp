#include "sim/mechanism/scene_fault.h"

#include <stdexcept>

#include "sim/trade/length.h"

namespace stowpath {

void refuse(const Scene& scene, const std::string& key, const std::string& problem, const std::string& hint) {
  throw SceneError(scene.file, {{place_of(scene, key), key, problem, hint}});
}

RoundedPolygon outline_of(const Scene& scene, const std::string& key, const std::vector<Vec2>& corners, double radius) {
  try {
    return make_rounded_polygon(corners, radius);
  } catch (const std::invalid_argument& wrong) {
    refuse(scene, key, wrong.what(), "give the corners of a convex outline, counter-clockwise");
  }
}

std::string say_length(const Scene& scene, Figure metres) {
  const bool inches = scene.units == FileUnits::inches;
  return format_length(metres, inches ? DisplayUnits::imperial : DisplayUnits::metric);
}

}  // namespace stowpath
