#pragma once

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

/// The greatest moment at one of the pipe's joints while the stair moves.
struct JointPeak {
  double station = 0.0;  ///< of the joint [m]
  double moment = 0.0;   ///< of either sign [N m]
  double at = 0.0;       ///< of the stair's middle [m]
};

struct RailCase {
  HookForces forces;
  MovingPeaks peaks;           ///< in the force's direction
  double stress = 0.0;         ///< greatest, M / S of the listed wall [Pa]
  double design_stress = 0.0;  ///< the same with 0.93 of the wall [Pa]
  double hinged_stress = 0.0;  ///< with 0.93 of the wall, were the pipe hinged over every bracket [Pa]
  std::vector<RailPlace> places;
  std::vector<JointPeak> joints;  ///< as Rail::joints lists them
};

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

/// What is left of a pipe where its thread is cut, to the root.
/// Source: ASME B1.20.1, depth of thread 0.8 of its pitch (S-thread): from memory.
Section threaded_section(const Pipe& pipe);

/// The pipe as a beam on its brackets: its ends, E I of the listed wall, and its own weight.
/// @throws std::invalid_argument with fewer than two brackets.
Beam rail_beam(const Rail& rail);

/// The pipe under the rolling stair: continuous over all brackets, which hold it both ways and let it turn. Couplings
/// are taken to be as stiff as the pipe; hinged_stress needs no such faith. A round pipe bends alike in every
/// direction; its own weight is added in line with the hooks' force, a little too much.
/// @param steps  places of the series, evenly over forces.stations
/// @throws std::invalid_argument with fewer than two brackets, shares that do not match the hooks, or no stations.
RailCase rail_under(const Scene& scene, const HookForces& forces, int steps = 400);

/// What one bracket gets in one state.
struct BracketLoad {
  bool holds_down = false;  ///< it must hold the pipe down, while the stair is elsewhere
  double station = 0.0;  ///< of the bracket [m]
  double at = 0.0;       ///< of the stair's middle [m]
  Vec2 force;            ///< of the pipe on the bracket: out, up [N]
  double pull = 0.0;     ///< on each screw of the upper half, along it [N]
  double shear = 0.0;    ///< on each screw, across it [N]
  double bending = 0.0;  ///< in the arm where it leaves the plate [N m]
};

/// Every bracket where it is pressed hardest, and where it must hold the pipe down hardest, if it ever must. The plate turns
/// about its lower edge, or about its upper one where the pipe lifts it; the half of its screws on the other side, at three
/// quarters of its height, hold it (our assumption: the scene does not say where the screws are).
std::vector<BracketLoad> bracket_loads(const Scene& scene, const RailCase& rail);

/// The hardest pressed of them.
BracketLoad worst_bracket(const Scene& scene, const RailCase& rail);

}  // namespace stowpath
