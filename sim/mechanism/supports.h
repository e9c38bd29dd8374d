#pragma once

#include <string>
#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// What things can be fastened to: floor, walls, ceiling, loft, and each thing that the scene names as an obstacle.
std::vector<const RoomPart*> building_of(const Model& model);

/// A flat face that is to be screwed to the building: an edge of the side view times a stretch of stations.
struct MountingFace {
  Vec2 a, b;          ///< its ends: out, up; the building is to the right of the way from a to b [m]
  Interval stations;  ///< [m]
};

/// How a mounting face lies on the building.
struct FaceSupport {
  double share = 0.0;     ///< of its area that lies on a face within kOnFace, 0 to 1
  double distance = 0.0;  ///< to the nearest thing of the building, 0 where they touch [m]
  std::string nearest;    ///< what holds most of it; else the nearest thing; empty in an empty room

  bool whole() const { return share >= 1.0 - 1e-9; }
};

/// A face is there where the building begins within kOnFace of the mounting face, on the side away from the thing: what
/// lies deep inside something is not on its face. An edge of kOnFace all round may stand over.
FaceSupport face_support(const MountingFace& face, const std::vector<const RoomPart*>& building);

/// The thing of the building that is nearest to a point of the room.
struct NearThing {
  std::string name;       ///< empty in an empty room
  double distance = 0.0;  ///< [m]
};
NearThing nearest_thing(Vec2 at, double station, const std::vector<const RoomPart*>& building);

/// Stations of the stretch at which a point that runs along it has nothing of the building within `reach` [m].
IntervalSet stations_without(Vec2 at, Interval stretch, double reach, const std::vector<const RoomPart*>& building);

}  // namespace stowpath
