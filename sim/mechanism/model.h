#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/geometry/rounded_polygon.h"
#include "sim/mechanism/contact_rule.h"
#include "sim/mechanism/course.h"
#include "sim/mechanism/linkage.h"
#include "sim/mechanism/rope_spot.h"
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
  double excess = 0.0;              ///< the outline may stand out of the true thing by up to this [m]
  int id = -1;                      ///< what contact rules name it by; -1: none does
};

/// The casters' wheels as they stand on the floor, upright in the working pose.
struct Wheels {
  int section = 0;                 ///< the last
  Vec2 axle;                       ///< in its frame [m]
  double radius = 0.0;             ///< [m]
  double half_width = 0.0;         ///< level, either way of the axle; of a swivel: as far as its wheel sweeps [m]
  std::vector<Interval> stations;  ///< what each takes up along the rail, from the stair's middle; none: no casters [m]
};

/// How far the lower corners of upright wheels may come below their lowest line as the section turns [m].
inline double corner_dip(const Wheels& wheels) { return norm(Vec2{wheels.radius, wheels.half_width}) - wheels.radius; }

/// The room's inside, beyond which floor, walls and ceiling are solid for as far as anything can reach.
struct RoomInside {
  Interval out, up, along;  ///< [m]
};

/// One end of a rope: a point of a section or of the room.
struct RopeEnd {
  int section = -1;     ///< from 0; -1: the room
  Vec2 at;              ///< in that frame [m]
  Interval stations;    ///< from the stair's middle, or of the room where section is -1 [m]
  bool rolls = false;   ///< a point of the room that rolls with the stair: its stations are from the stair's middle
};

/// When a part of the hoist line is there.
enum class LineState { always, hooked_on, hooked_off };

/// Whether what is there in `state` is there while the line is hooked on, or is not.
constexpr bool is_there(LineState state, bool hooked_on) {
  return state == LineState::always || (state == LineState::hooked_on) == hooked_on;
}

/// A straight run of rope between two ends, a moving capsule. Blocks, spreader bars and tackles are such runs too: as
/// thick as they are, and from a spot to a spot instead of from end to end.
struct RopeRun {
  PartKind kind = PartKind::line;
  std::string name;       ///< "hoist line", "fold line"
  RopeEnd a, b;
  double radius = 0.0;    ///< [m]
  LineState when = LineState::always;
  RopeSpot first{false, 0.0}, last{true, 0.0};  ///< its core runs from here to here
  double first_aside = 0.0, last_aside = 0.0;  ///< there it is this far along the rail from the line between the ends [m]
  double half_width = 0.0;  ///< of a bar that lies along the rail [m]
  int id = -1;            ///< see StairPart
};

/// A fixed prism of the room (equal outlines share one entry: nine brackets are nine stretches).
struct RoomPart {
  PartKind kind = PartKind::obstacle;
  std::string name;                ///< "bracket arm", "loft", "strip light"
  RoundedPolygon outline;          ///< out, up [m]
  std::vector<Interval> stations;  ///< [m]
  double excess = 0.0;             ///< the outline may stand out of the true thing by up to this [m]
  int thing = 0;                   ///< pieces of one thing (a round post's slabs) share a number
  LineState when = LineState::always;  ///< of the hoist line that hangs or is led off
  bool aslant = false;  ///< the true thing is somewhere within its stations, and not all along them
  int id = -1;          ///< see StairPart
};

/// A straight rope that stays where it is in the room: the led-off line, or what hangs while it is not hooked on.
struct RoomRope {
  std::string name;     ///< "line to the lead", "hanging hoist line"
  RoomPoint a, b;
  double radius = 0.0;  ///< [m]
  LineState when = LineState::always;
  int id = -1;          ///< that of the room's parts which draw it
};

struct ZonePart {
  std::string name;
  std::vector<ZoneState> when;
  RoundedPolygon outline;
  Interval stations;
  bool of_hand = false;  ///< the room of whoever pulls the line
};

enum class MoveKind { stand, roll, lift, fold, together, drag, hang, park };

/// A state that the stair stays in, not something it does.
constexpr bool is_state(MoveKind kind) { return kind == MoveKind::stand || kind == MoveKind::park; }

/// Where the hooks may have the pipe in a move, and what follows for the stair.
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
  std::optional<MoveSeat> seat{};  ///< set when the model is assembled, for the scene's seat range at the least
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

/// The tackle between ceiling point and pick, for two-blocking.
struct Tackle {
  RopeEnd top, bottom;      ///< what its two blocks hang on
  double from_bottom = 0.0;  ///< the lower block hangs this far from there, on a spreader [m]
  double blocks = 0.0;      ///< length of both together [m]
};

/// The scene assembled: everything that the proof needs, in SI, nothing of the file.
struct Model {
  std::string name;
  FileUnits units = FileUnits::millimetres;
  Margins margin;
  Linkage linkage;
  double working_lean = 0.0;        ///< [rad]
  Interval working_leans;           ///< with the floor's unevenness [rad]
  Vec2 axle;                        ///< the casters' in section 1's frame, the chain straight [m]
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
  double home_within = 0.0;         ///< how near to its mark the stair stands, either way [m]
  std::vector<StairPart> stair;
  Wheels wheels;
  std::vector<RopeRun> ropes;
  std::vector<RoomPart> room;
  std::vector<RoomRope> room_ropes;   ///< also among `room`, slab by slab
  RoomInside inside;
  std::vector<ZonePart> zones;
  std::vector<ContactRule> contacts;  ///< what may touch; everything else keeps its margin
  std::optional<Tackle> tackle;       ///< of two or more parts of line
  std::vector<Move> moves;
  std::vector<SectionMass> masses;  ///< by section
  std::vector<BuildFault> faults;
};

/// Assembles a scene: parts of stair and room, working lean, the procedure's moves.
/// @throws SceneError, placed in the file, where the stair cannot stand (by how much), the procedure is out of order
///         (a fold while pinned, a drag with the foot in the air, ...), or a number contradicts another.
Model build_model(const Scene& scene);

}  // namespace stowpath
