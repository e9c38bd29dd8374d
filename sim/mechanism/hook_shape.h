#pragma once

#include <optional>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/geometry/rounded_polygon.h"
#include "sim/geometry/vec2.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// A hook's bend and the end of its curl: what closed forms need to say where it bears, strikes and comes off.
///
/// It lies in section 1's frame with the hook circle's centre at the origin. A place on the bend is told by its angle,
/// as in hook_parts: 0 at the shank's side (towards the climber), 90 degrees at the crown, 180 degrees on the wall
/// side. At a lean that place stands at the room angle (its angle + lean), counter-clockwise from out: so the angle at
/// which the pipe is touched and the angle that the hook covers differ by the lean and by nothing else.
struct HookShape {
  double inside = 0.0;  ///< radius of the face that bears on the pipe [m]
  double outer = 0.0;   ///< radius of the bend's outside [m]
  Interval arc;         ///< angles of the bend at which the pipe can bear; a tip past it is straight, and no arc [rad]
  std::vector<Vec2> end;  ///< the end's corners, from the arc's inner side round the tip to its outer side [m]
  std::vector<RoundedPolygon> plates{};  ///< a plate hook's parts besides its rim
};

/// A rod bent round a circle.
/// @param wrap   arc covered, from the shank [rad]
/// @param tip    straight length past the arc, with the rod's full thickness [m]
/// @param point  length past the tip over which the rod tapers to a point on its axis; 0: cut off square [m]
HookShape bent_rod(double inside, double rod, double wrap, double tip, double point);

/// The scene's hooks. A plate's rim is a bend of its own depth, cut off square; a roller adds nothing, since its tread
/// touches the same circle.
/// @throws std::invalid_argument where a plate's part is not convex.
HookShape hook_shape(const Hooks& hooks);

/// A place on the bend, in the section's frame [m].
Vec2 on_bend(double radius, double angle);

/// A point given in the section's frame, seen from the hook circle's centre in the room: out, up [m].
Vec2 seen_in_room(Vec2 p_S, double lean);

/// The room angles that the hook covers at a lean, counter-clockwise from out: 90 degrees is the pipe's top [rad].
Interval covered_arc(const HookShape& hook, double lean);

/// The end's corners in the room, from the hook circle's centre, in the order of HookShape::end [m].
std::vector<Vec2> end_in_room(const HookShape& hook, double lean);

/// Height of the curl's lowest point over the hook circle's centre, usually negative: a corner of the end, or the
/// bend's outside where the curl has turned past the bottom; of a plate, also those corners of its parts that lie on
/// the wall side of the section's datum line [m].
double lowest_of_curl(const HookShape& hook, double lean);

/// How far the stair must rise, its lean kept, before the whole curl can pass over the pipe's top; 0 where the hook
/// does not reach over the top at all (arc + lean up to 90 degrees).
///
/// The pipe is a disc; what the disc's centre may not enter is the curl grown by the pipe's radius, whose lowest point
/// lies one radius below the curl's. The pipe can be led round it as soon as it gets through the hook's mouth, which
/// the reader of the scene checks. Sliding the stair along itself to the same end takes the amount for a lean of 0.
/// @param centre_up  height of the hook circle's centre over the pipe's: -(inside - pipe_radius) under a plumb load [m]
double lift_to_unhook(const HookShape& hook, double lean, double pipe_radius, double centre_up);

/// A bracket's rod in the room, from the hook circle's centre: a capsule, or a disc where a == b.
struct ArmLine {
  Vec2 a, b;            ///< its centre line: out, up [m]
  double radius = 0.0;  ///< [m]
};

/// The lean at which the hook's end first touches the arm as the lean grows, in closed form [rad].
///
/// Each corner of the end runs on a circle, which meets the arm's two sides and its two round ends; each straight side
/// of the end keeps its distance from the centre, so it meets a round end where that lies the radius away from it. The
/// first of these leans is the touch: two convex outlines that come to touch do so at a corner of one of them. A
/// plate's parts count as the end does.
/// @param from  a lean at which the hook is clear of the arm [rad]
/// @return nothing if no turn of the hook makes its end touch; else a lean from `from` to less than a turn beyond
std::optional<double> first_meeting(const HookShape& hook, const ArmLine& arm, double from);

}  // namespace stowpath
