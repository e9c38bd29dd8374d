#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/geometry/rounded_polygon.h"
#include "sim/mechanism/course.h"
#include "sim/mechanism/linkage.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// What a part is, as far as margins and meant contacts care.
enum class PartKind {
  // of the stair
  side_rail, tread, scab, spacer_block, lock_pin, hinge, hook, caster, caster_plate, caster_block, handrail, extra,
  line, fold_line,
  // of the room
  floor, wall, ceiling, loft, guard, pipe, bracket, pipe_joint, rail_stop, obstacle, zone, lead_line
};

/// A prism fixed to one section: an outline in the section's frame times stretches along the rail.
struct StairPart {
  PartKind kind = PartKind::extra;
  std::string name;                 ///< as a builder says it, no number: "side rail", "hook curl", "tread"
  int section = 0;                  ///< from 0
  RoundedPolygon outline;           ///< in the section's frame [m]
  std::vector<Interval> stations;   ///< from the stair's middle [m]
  bool only_pinned = false;         ///< a lock pin: gone once its hinge is unpinned
  int hinge = -1;                   ///< the hinge it belongs to, from 0 (scab, lock, hinge); -1 none
};

/// One end of a rope: a point of a section or of the room.
struct RopeEnd {
  int section = -1;     ///< from 0; -1: the room
  Vec2 at;              ///< in that frame [m]
  Interval stations;    ///< from the stair's middle, or of the room where section is -1 [m]
  bool rolls = false;   ///< a point of the room that rolls with the stair: its stations are from the stair's middle
};

/// A straight run of rope between two ends, a moving capsule.
struct RopeRun {
  PartKind kind = PartKind::line;
  std::string name;             ///< "hoist line", "fold line"
  RopeEnd a, b;
  double radius = 0.0;          ///< [m]
  bool only_hooked_on = false;  ///< there only while the line is hooked on
};

/// A fixed prism of the room (equal outlines share one entry: nine brackets are nine stretches).
struct RoomPart {
  PartKind kind = PartKind::obstacle;
  std::string name;                ///< "bracket arm", "loft", "strip light"
  RoundedPolygon outline;          ///< out, up [m]
  std::vector<Interval> stations;  ///< [m]
  double excess = 0.0;             ///< the outline may stand out of the true thing by up to this [m]
  int thing = 0;                   ///< pieces of one thing (a round post's slabs) share a number
};

struct ZonePart {
  std::string name;
  std::vector<ZoneState> when;
  RoundedPolygon outline;
  Interval stations;
};

enum class MoveKind { stand, roll, lift, fold, together, drag, hang, park };

/// A state that the stair stays in, not something it does.
constexpr bool is_state(MoveKind kind) { return kind == MoveKind::stand || kind == MoveKind::park; }

/// Where the hooks have the pipe in a move, by statics.
struct MoveSeat {
  Interval touch;       ///< of the contact off the pipe's crown, positive towards the wall [rad]
  double rise = 0.0;    ///< the pivot may be higher than its nominal place by up to this while the foot stands [m]
  double growth = 0.0;  ///< and parts further off by up to this, as sections turn to keep the foot on the floor [m]
  double hook_growth = 0.0;  ///< the same of the hooks alone, which are near the pivot [m]
};

/// One thing the stair does, or a state it stays in (stand, park), to be proven as a whole.
struct Move {
  int index = 0;                  ///< of the procedure's steps, from 1; 0: the standing stair when no step rolls it
  MoveKind kind = MoveKind::lift;
  std::vector<Segment> segments;  ///< in order; a state has one, which spans the leans it may stand at
  ZoneState state = ZoneState::moving;
  bool hooked_on = false;         ///< the hoist line is on
  std::vector<bool> pinned;       ///< by hinge
  std::optional<MoveSeat> seat{};  ///< none: as far as the scene's seat range goes
};

/// Whether the move is the stair standing on its casters, over every station meant.
inline bool stands_over_stations(const Move& move) {
  return move.kind == MoveKind::stand || (move.kind == MoveKind::roll && move.state == ZoneState::standing);
}

/// Mass, centre and inertia of a section or of something on it, in the section's frame.
struct SectionMass {
  double mass = 0.0;     ///< [kg]
  Vec2 centre;           ///< [m]
  double inertia = 0.0;  ///< about its own centre, for turning in the side view [kg m2]
};

/// A rule of building that the scene breaks, found while assembling it: not an error of the file.
struct BuildFault {
  std::string text;                ///< "a tread would cross the joint at 1.790 m along: ..."
  std::vector<std::string> parts;  ///< what it concerns
  std::vector<int> moves{};        ///< in which it shows, as numbers of Model::moves; empty where it always does
};

/// The scene assembled: everything that the proof needs, in SI, nothing of the file.
struct Model {
  std::string name;
  FileUnits units = FileUnits::millimetres;
  Margins margin;
  Linkage linkage;
  double working_lean = 0.0;        ///< [rad]
  Interval working_leans;           ///< with the floor's unevenness [rad]
  double hook_play = 0.0;           ///< how far the pivot may wander in the seat range [m]
  double hook_slack = 0.0;          ///< inside radius less the pipe's [m]
  double seat_range = 0.0;          ///< [rad]
  double pipe_sag = 0.0;            ///< the loaded pipe gives way under the hooks by up to this; 0: taken as straight [m]
  double floor_uneven = 0.0;        ///< [m]
  double floor_level = 0.0;         ///< [m]
  double arc_tolerance = 5e-5;      ///< round things stand out of the true ones by at most this [m]
  Interval span;                    ///< stations that the rail's ends and stops allow the stair [m]
  Interval loft_span;               ///< stations of the loft to be served [m]
  std::optional<double> home;       ///< [m]
  std::vector<StairPart> stair;
  std::vector<RopeRun> ropes;
  std::vector<RoomPart> room;
  std::vector<ZonePart> zones;
  std::vector<Move> moves;
  std::vector<SectionMass> masses;  ///< by section
  std::vector<BuildFault> faults;
};

/// Assembles a scene: parts of stair and room, working lean, the procedure's moves.
/// @throws SceneError, placed in the file, where the stair cannot stand (by how much), the procedure is out of order
///         (a fold while pinned, a drag with the foot in the air, ...), or a number contradicts another.
Model build_model(const Scene& scene);

}  // namespace stowpath
