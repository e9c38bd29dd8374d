#pragma once

#include <array>
#include <memory>
#include <utility>
#include <vector>

#include "sim/hoist/pull_pose.h"
#include "sim/hoist/statics.h"
#include "sim/rehearsal/world_parts.h"

namespace stowpath {

/// Between parts that touch, the world may leave a gap or let them overlap by up to this, whatever the speed is not:
/// its contacts are those of a physics engine, and certify nothing [m].
inline constexpr double kWorldSkin = 1.5e-3;

/// What a side world is made of, besides the model.
struct SideSetup {
  double step = 1.0 / 960.0;         ///< [s]
  double station = 0.0;              ///< of the stair's middle [m]
  std::vector<SectionMass> masses;   ///< by section
  std::vector<double> hinge_limits;  ///< greatest folds; empty: the hinges turn without limit [rad]
  std::vector<bool> pinned;          ///< by hinge; empty: none is
  FrictionChoice friction;           ///< all 0: frictionless
  double hook_radius = 0.0;          ///< that slides on the pipe [m]
  double hinge_radius = 0.0;         ///< of the hinges' pins [m]
  double hook_wrap = 0.0;            ///< arc of the pipe that the hooks cover, from their shank on [rad]
  bool on_pipe = true;               ///< false: the chain flies free
  bool gravity = true;
};

/// How a section moves.
struct SectionMotion {
  Vec2 velocity;      ///< of its frame's origin [m/s]
  double rate = 0.0;  ///< of its turn, counter-clockwise [rad/s]
};

/// Two parts that began to touch in a step.
struct WorldTouch {
  int a = 0, b = 0;     ///< which of parts()
  double speed = 0.0;   ///< at which they closed [m/s]
  double energy = 0.0;  ///< that the stroke took [J]
  double gap = 0.0;     ///< exact signed distance at that pose [m]
};

/// The stair in its side view, in the physics engine: sections that are pinned together are one body, the others turn
/// on the rail's pivot and their hinges with dry friction; the room's things stand fixed.
///
/// Ten world units are a metre, so that the engine's own slop is half a millimetre; its origin is the pivot. Velocities
/// stand half a step behind the poses (the scheme is a leapfrog, see chain_turn.h). The same calls give the same bits
/// on the same machine.
class SideWorld {
 public:
  /// @throws std::invalid_argument as check_side does (sim/rehearsal/side_check.h)
  SideWorld(const Model& model, SideSetup setup, const Configuration& start);
  ~SideWorld();
  SideWorld(const SideWorld&) = delete;
  SideWorld& operator=(const SideWorld&) = delete;

  /// Sets the velocities half a step back, so that the stair is at rest now and not half a step ago. Loads given
  /// before act in it.
  void start_from_rest();
  /// A force on a point of a section for the next step alone [m, N].
  void push(int section, Vec2 at, Vec2 force);
  /// A moment for the next step alone: on section `hinge` + 1, and back on the one above; hinge -1: on section 1 from
  /// outside [N m].
  void turn(int hinge, double moment);
  void step();

  double time() const;
  double step_length() const;  ///< [s]
  SectionPoses poses() const;
  std::vector<double> turns() const;  ///< of each section's frame, never wrapped [rad]
  SectionMotion motion(int section) const;
  Vec2 point_velocity(int section, Vec2 at) const;
  /// Inverse of the mass that a unit of these loads moves, each body taken as free: no less than with its pins [1/kg].
  double inverse_mass(const std::vector<SectionLoad>& unit) const;

  /// Stands the stair, as it is, at another station, among what can be met there. What overlaps there already is set
  /// aside as at the start; what touched and is there too goes on pushing. Loads given for the next step are lost.
  void move_to(double station);
  double station() const;                          ///< of the stair's middle [m]
  const std::vector<SectionMass>& masses() const;  ///< by section, with what hangs on them

  void set_pinned(const std::vector<bool>& pinned);
  const std::vector<bool>& pinned() const;
  /// Whether the pipe holds the hooks. Where its force points out of the arc that they cover for a twentieth of a
  /// second, they leave it, and are held by what they touch; where they have come to rest on it again, it holds them
  /// there.
  bool hooks_on_pipe() const;
  double hook_lift() const;  ///< how far the hooks' centre is from where the pipe last held it [m]
  Vec2 hook_force() const;   ///< pipe on stair [N]
  /// Where on the hook the pipe presses: angle from the crown, positive towards the curl's end [rad].
  double seat() const;

  double energy() const;  ///< kinetic and potential (from the pivot's height) one step ago, where both are known [J]
  Vec2 momentum() const;  ///< [kg m/s]

  const std::vector<WorldPart>& parts() const;
  const std::vector<WorldTouch>& new_touches() const;  ///< of the last step
  std::vector<std::pair<int, int>> touching() const;   ///< zones left out
  std::vector<std::pair<int, int>> inside_zones() const;
  /// Pairs that overlapped already when their bodies were put in, without having touched before: they do not push each
  /// other until they have parted. Ends that butt are left out.
  std::vector<std::pair<int, int>> met_from_start() const;

 private:
  struct Engine;
  Configuration start_;
  std::unique_ptr<Engine> engine_;
};

/// Leans of the sections as the world has them [rad].
std::array<double, kMaxSections> leans_in(const SideWorld& world);

}  // namespace stowpath
