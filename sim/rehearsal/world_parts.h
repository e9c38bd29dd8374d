#pragma once

#include <string>
#include <vector>

#include "sim/geometry/distance.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// A thing that the physics world knows by its number: a part of the stair, of the room, or a keep-clear zone.
struct WorldPart {
  PartKind kind = PartKind::obstacle;
  std::string name;
  int section = -1;                ///< from 0; -1: the room
  int hinge = -1;                  ///< a lock pin's, from 0
  bool only_pinned = false;        ///< there only while its hinge is pinned
  Outline outline;                 ///< the true one, for exact distances, in its section's frame or the room's [m]
  RoundedPolygon shape;            ///< the same
  std::vector<Interval> stations;  ///< of the room [m]
  std::vector<ZoneState> when;     ///< of a zone: the states that name it
  double excess = 0.0;             ///< may stand out of the true thing by up to this [m]
  bool rolls = false;              ///< a caster's wheel as the floor meets it
  bool on_edge = false;            ///< a caster's wheel as everything else meets it
};

/// All parts of the stair at a station, then what of the room could be met there: what shares no station with the stair
/// is left out, and so are ropes: what they touch, the dry fit says.
///
/// On the floor a caster is a disc about its axle, the last of the stair's parts, so that it stands at one height however
/// the section leans; its true outline, on edge, meets everything else. Floor, walls and ceiling are cut off a metre or
/// two beyond their faces: the engine reckons with float, and nothing gets that deep.
std::vector<WorldPart> world_parts(const Model& model, double station);

/// Whether the two can push each other, or a zone can be entered by the other: they share stations, belong to different
/// bodies, and are not built to touch. Casters do push the floor; hooks and pipe are left to the rail's pivot, until
/// the hooks have left it.
/// @param hooks_on_pipe  the pivot holds the hooks
/// @param folded  the hinge between two adjacent sections is folded by a quarter turn or more
bool can_touch(const WorldPart& a, const WorldPart& b, bool hooks_on_pipe, bool folded);

/// Exact signed distance of two parts with the sections placed so [m].
double part_distance(const WorldPart& a, const WorldPart& b, const SectionPoses& X_W);

}  // namespace stowpath
