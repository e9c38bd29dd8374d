#pragma once

#include <functional>
#include <string>
#include <vector>

#include "sim/scene/scene.h"

namespace stowpath {

/// A length or an angle that somebody measures or sets, by its key in the scene file.
struct Measurement {
  std::string key;                            ///< "rail.at.up", "stair.sections[0]"
  std::string words;                          ///< as a builder says it: "pipe's height"
  bool angle = false;                         ///< else a length
  std::function<void(Scene&, double)> shift;  ///< makes it larger by that much, and what follows from it [m or rad]
};

/// Every length and angle of the room, rail, stair, hoist and procedure that the geometry depends on. Obstacles and
/// keep-clear zones are left out: theirs move nothing but themselves. So are margins and the seat range, which are
/// wishes and assumptions, sizes that only the loads read, and what a scene does without (a tip or a spacer of 0).
std::vector<Measurement> measurements(const Scene& scene);

/// One of an obstacle or of a keep-clear zone.
struct ThingMeasurement {
  std::string key, words;
  std::function<void(Obstacle&, double)> shift;  ///< makes it larger by that much [m]
};

/// Those of obstacle `number` (from 0).
std::vector<ThingMeasurement> obstacle_measurements(const Scene& scene, int number);

/// Those of keep-clear zone `number` (from 0), which is looked at as an obstacle of its shape.
std::vector<ThingMeasurement> zone_measurements(const Scene& scene, int number);

/// A zone's shape.
Obstacle as_obstacle(const Zone& zone);

}  // namespace stowpath
