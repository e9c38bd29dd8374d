#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/loads/moving_load.h"
#include "sim/scene/scene.h"
#include "sim/trade/section.h"
#include "sim/trade/source.h"

namespace stowpath {

/// What the stair's hooks do to the pipe in one state of it.
struct HookForces {
  std::string name;           ///< "one person on tread 9"
  Vec2 total;                 ///< of all hooks on the pipe: out, up [N]
  std::vector<double> share;  ///< by hook, as Hooks::stations lists them; they add up to 1
  Interval stations;          ///< where the stair's middle may be meanwhile [m]
  bool ultimate = false;      ///< held against what breaks
  bool moving = false;        ///< of a moving line, the dynamic factor in
};

/// The pipe with the stair's middle at one station.
struct RailPlace {
  double station = 0.0;     ///< [m]
  double stress = 0.0;      ///< greatest bending stress anywhere in the pipe [Pa]
  double most_sag = 0.0;    ///< greatest deflection anywhere in the pipe [m]
  std::vector<double> sag;  ///< of the pipe under each hook, in the force's direction [m]
};

/// What the scene lets us know of a joint: only its coupling's diameter.
enum class JointKind {
  coupling,  ///< it stands out from the pipe: taken as the usual threaded coupling, though it may be a welded sleeve
  flush      ///< no wider than the pipe: a weld or a connector inside; what that passes on is not known here
};

/// The pipe at one of its joints while the stair moves.
///
/// A threaded pipe is weakest at the thread's root where it enters its coupling, so both ends of the coupling are
/// looked at and the worse one is given; a flush joint is looked at where it is. The joint must pass these moments on.
struct JointPeak {
  double station = 0.0;  ///< of the joint's middle [m]
  JointKind kind = JointKind::coupling;
  MovingPeak sagging;                     ///< [N m]
  MovingPeak hogging;                     ///< as a positive number [N m]
  double moment = 0.0;                    ///< the greater of both [N m]
  double at = 0.0;                        ///< where along the pipe that is [m]
  double position = 0.0;                  ///< of the stair's middle, then [m]
  std::optional<double> stress{};         ///< M / S of the thread's root in the listed wall [Pa]
  std::optional<double> design_stress{};  ///< the same in 0.93 of the wall; both none for a flush joint, or a wall
                                          ///< thinner than its thread is deep [Pa]
};

struct RailCase {
  HookForces forces;
  MovingPeaks peaks;           ///< in the force's direction
  double stress = 0.0;         ///< greatest, M / S of the listed wall [Pa]
  double design_stress = 0.0;  ///< the same with 0.93 of the wall [Pa]
  double hinged_stress = 0.0;  ///< with 0.93 of the wall, were the pipe hinged over every bracket [Pa]
  std::vector<RailPlace> places;
  std::vector<JointPeak> joints{};  ///< one for each of Rail::joints
};

/// Up to this much over the pipe's diameter a joint counts as flush; the side view draws it so too [m].
inline constexpr double kFlushJoint = 5e-4;

/// Strength of the pipe: allowable bending stress and where its numbers are from.
struct PipeStrength {
  Section listed;          ///< at the full wall
  Section design;          ///< at 0.93 of it
  double yield = 0.0;      ///< [Pa]
  double allowable = 0.0;  ///< yield over kSteelFactor [Pa]
  SourceStatus status = SourceStatus::memory;
};

/// Yield over allowable stress in bending: AISC allowable strength design, from memory.
inline constexpr double kSteelFactor = 1.67;

PipeStrength pipe_strength(const Pipe& pipe);

/// The pipe as a beam on its brackets: its ends, E I of the listed wall, and its own weight.
/// @throws std::invalid_argument with fewer than two brackets.
Beam rail_beam(const Rail& rail);

/// The pipe under the rolling stair: continuous over all brackets, which hold it both ways and let it turn. Couplings
/// are taken to be as stiff as the pipe; hinged_stress needs no such faith, and `joints` tells what they must pass on.
/// A round pipe bends alike in every direction; its own weight is added in line with the hooks' force, a little too
/// much.
/// @param steps  places of the series, evenly over forces.stations
/// @throws std::invalid_argument with fewer than two brackets, shares that do not match the hooks, or no stations.
RailCase rail_under(const Scene& scene, const HookForces& forces, int steps = 400);

/// How the pipe acts on a bracket in one state.
enum class BracketState {
  pressed,   ///< the pipe pushes on its saddle
  held_down  ///< the pipe lifts off: the bracket must hold it the other way
};

/// What one bracket gets.
struct BracketLoad {
  BracketState state = BracketState::pressed;
  double station = 0.0;  ///< of the bracket [m]
  double at = 0.0;       ///< of the stair's middle [m]
  Vec2 force;            ///< of the pipe on the bracket: out, up [N]
  double pull = 0.0;     ///< on each screw of the half that is pulled more, along it [N]
  bool lower = false;    ///< that is the lower half: the plate opens below
  double shear = 0.0;    ///< on each screw, across it [N]
  double bending = 0.0;  ///< in the arm where it leaves the plate [N m]
  double uplift = 0.0;   ///< of all brackets, the greatest force by which one must hold the pipe down [N]
};

/// Every bracket at its worst, pressed and then held down, in the order of the stations: two entries a bracket. A
/// bracket that never gets one of them has an entry without a force.
///
/// The plate is stiff. The force tilts it about its lower or its upper edge; the half of its screws that is away from
/// that edge, at three quarters of its height, holds it (our assumption: the scene does not say where the screws are).
/// Where the pipe pulls outward so hard that neither edge is pressed, both halves share the pull.
std::vector<BracketLoad> bracket_loads(const Scene& scene, const RailCase& rail);

/// The hardest pressed of them.
BracketLoad worst_bracket(const Scene& scene, const RailCase& rail);

}  // namespace stowpath
