#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "sim/rehearsal/span_stair.h"

namespace stowpath {

/// Kinetic friction of one run: coefficients, and the lever arm of the casters' resistance.
struct SpanFriction {
  double hook = 0.0;         ///< hook on pipe
  double floor = 0.0;        ///< a caster scrubbing sideways
  double rolling_arm = 0.0;  ///< [m]
  double roller_arm = 0.0;   ///< the same of rollers in the hooks [m]
};

/// Drag over the force that presses, where a hook's roller carries it. Only for a stair whose hooks have one.
double roller_drag(const SpanStair& stair, const SpanFriction& friction);

/// The most that a hook drags along the pipe: friction times all that it bears, or, where a roller carries the weight
/// or what presses sideways, each by itself.
/// @param load  down on the pipe [N]
/// @param aside  of the pipe on the hook, away from the wall [N]
double hook_drag(const SpanStair& stair, const SpanFriction& friction, double load, double aside);

/// A hand on the stair. The force keeps its direction in the room.
struct SpanPush {
  Vec2 at;     ///< in the stair's frame [m]
  Vec2 force;  ///< along the rail, out [N]
};

/// Where the stair is in the plan, and how it moves.
struct SpanState {
  double station = 0.0;  ///< of the stair's middle on the pipe [m]
  double out = 0.0;      ///< how far that point is out of the pipe's axis: within the hooks' play [m]
  double yaw = 0.0;      ///< counter-clockwise seen from above, along the rail to the right and out up the page [rad]
  double speed = 0.0;    ///< of that point along the rail [m/s]
  double turning = 0.0;  ///< [rad/s]
};

/// The stair ran into something.
struct SpanTouch {
  int bump = 0;          ///< which of SpanSite::bumps
  double time = 0.0;     ///< [s]
  double station = 0.0;  ///< of the stair's middle [m]
  double speed = 0.0;    ///< with which the two closed [m/s]
};

/// Metres to the world's lengths: play of millimetres must be many times Box2D's slop of 0.005.
inline constexpr double kSpanScale = 100.0;

/// Box2D keeps touching shapes apart by its skin of 0.01: this much, in metres.
inline constexpr double kSpanSkin = 0.01 / kSpanScale;

/// The stair in the plan, run by Box2D. A hook hangs in the bowl of its play: pushed aside by y it stands on the pipe's
/// flank, whose slope there has the sine y / play, and its load drives it back by load * tan(slope). It drags by mu
/// times all that it bears on the pipe, against its slip. From a slope of 70 degrees on its two jaws meet the pipe's
/// sides, with friction of their own. Casters roll against their arm of resistance and scrub against the floor. Dry
/// drags stop what they can stop within a step.
class SpanWorld {
 public:
  /// @param step  [s]
  /// @throws std::invalid_argument as check_span does (sim/rehearsal/span_check.h)
  SpanWorld(const SpanStair& stair, const SpanSite& site, const SpanFriction& friction, double station, double step);
  ~SpanWorld();
  SpanWorld(SpanWorld&&) noexcept;
  SpanWorld& operator=(SpanWorld&&) noexcept;

  /// One step, with a hand on the stair or without.
  void advance(const std::optional<SpanPush>& push = {});
  /// Sets the stair moving along the rail, without turn.
  void set_speed(double speed);

  SpanState state() const;
  double time() const;                            ///< [s]
  double energy() const;                          ///< of motion, and of hooks lifted on the pipe's flank [J]
  Vec2 momentum() const;                          ///< [kg m/s]
  const std::vector<SpanTouch>& touches() const;  ///< each bump's first, in order of time

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace stowpath
