#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/geometry/vec2.h"
#include "sim/mechanism/model.h"

namespace stowpath {

// The plan: the standing stair seen from above. x runs along the rail, y out from the pipe's axis; the stair's own
// frame has its origin on the pipe's axis at the middle of its width.

/// A hook in the plan.
struct SpanHook {
  double x = 0.0;     ///< from the stair's middle [m]
  double load = 0.0;  ///< that it puts on the pipe, straight down [N]
};

/// A caster in the plan, rigid: it rolls along the rail and scrubs out from it.
struct SpanCaster {
  Vec2 at;            ///< [m]
  double load = 0.0;  ///< on the floor [N]
};

/// What a roller in each hook carries in the working pose, by where on the bend it stands: what presses within 45 degrees of
/// its middle (a judgement).
enum class RollerSide {
  crown,  ///< the stair's weight; what presses sideways bears on the hook beside it
  wall,   ///< what presses the hook towards the wall: the roller lies on the pipe's wall side
  room,   ///< what presses it away from the wall
  below   ///< nothing
};

struct SpanRoller {
  double radius = 0.0;  ///< [m]
  RollerSide side = RollerSide::crown;
};

/// The standing stair as one body in the plan.
struct SpanStair {
  double mass = 0.0;     ///< [kg]
  Vec2 centre;           ///< of mass [m]
  double inertia = 0.0;  ///< about its centre, for turning in the plan [kg m2]
  std::vector<SpanHook> hooks;
  double hook_rod = 0.0;       ///< diameter; of a plate, its thickness [m]
  double hook_inside = 0.0;    ///< inside radius of the bend [m]
  double pipe_radius = 0.0;    ///< [m]
  double caster_radius = 0.0;  ///< [m]
  std::vector<SpanCaster> casters;
  std::optional<SpanRoller> roller{};  ///< in every hook

  double play() const { return hook_inside - pipe_radius; }  ///< of a hook to each side of the pipe [m]
  double spacing() const;                                    ///< of the outermost hooks [m]
};

/// The stair in its working pose. Hooks and casters share the weight by moments, the floor taken as smooth across the
/// rail; of several hooks each carries what a rigid stair would put on equal springs.
///
/// The inertia takes each section's mass as lying along its datum line: what lies across it adds under a part in fifty.
/// @throws std::invalid_argument where nothing weighs or there are no casters.
SpanStair span_stair(const Scene& scene, const Model& model);

/// A part of the stair and a thing of the room that overlap in the side view of the working pose: the stair runs into
/// it, and that stops it along the rail.
struct SpanBump {
  std::string part, thing;  ///< "hook curl", "bracket arm"
  Interval moving;          ///< from the stair's middle [m]
  Interval fixed;           ///< of the room [m]
  Interval out;             ///< in which they face each other, from the pipe's axis [m]
};

/// What the stair rolls in.
struct SpanSite {
  Interval pipe;  ///< its two ends [m]
  std::vector<SpanBump> bumps;
};

/// Every pair that meets by the side views of the proof, the rail's stops among them.
SpanSite span_site(const Scene& scene, const Model& model);

/// Stations of the stair's middle at which nothing of the list is met [m].
IntervalSet free_stations(const SpanSite& site, Interval span);

}  // namespace stowpath
