#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/loads/climber.h"
#include "sim/loads/rail.h"
#include "sim/mechanism/model.h"
#include "sim/scene/scene.h"
#include "sim/trade/source.h"

namespace stowpath {

/// A greatest load and the state in which it stands.
struct WorstLoad {
  double force = 0.0;  ///< [N]
  std::string where;   ///< "raising, lean 62°"
};

/// What the hoist does to its hardware: greatest values over the whole procedure, without the dynamic factor.
struct HoistLoads {
  WorstLoad line;              ///< tension of the hardest pulled segment
  WorstLoad dead_end;          ///< tension of the segment that is tied
  WorstLoad hand;              ///< tension at the hand, cleat or drum
  Vec2 ceiling;                ///< force on the ceiling point where it is greatest: out, up [N]
  double ceiling_along = 0.0;  ///< and along the rail [N]
  std::string ceiling_where;
  WorstLoad pick;                ///< of the line on the pick, all picks together
  std::vector<WorstLoad> leads;  ///< on each lead sheave
  Vec2 hooks;                    ///< pipe on all hooks where it is greatest: out, up [N]
  std::string hooks_where;
  WorstLoad hinge;            ///< on the hinges of one joint, both sides together
  WorstLoad fold_line;        ///< tension
  double joint_moment = 0.0;  ///< that a pinned joint passes on while hoisted, both sides together [N m]
  std::string joint_where;
};

enum class LoadKind { force, moment, stress };  ///< N, N m or Pa

/// One piece that carries load.
struct HardwareItem {
  std::string name;  ///< "lock pin in the wood"
  LoadKind kind = LoadKind::force;
  double load = 0.0;                   ///< worst, `dynamic` included [N, N m or Pa]
  std::optional<double> resistance;    ///< rating or computed; none: not known, or not ours to judge [as load]
  std::string where;                   ///< worst pose or place of the climber
  std::string basis;                   ///< what the resistance is
  std::optional<SourceStatus> status;  ///< of the basis; none for the user's own rating or where there is no resistance
  std::string note;
  double dynamic = 1.0;  ///< factor already in the load, for the jerks of a moving line

  /// How many times the load it bears: below 1 it does not. None without a resistance; a piece without load has 1e9.
  std::optional<double> ratio() const;
};

struct HardwareInputs {
  const Scene& scene;
  const Model& model;
  const ClimberReport& climber;
  std::vector<RailCase> rails;      ///< every state of the pipe looked at; none where it has fewer than two brackets
  std::optional<HoistLoads> hoist;  ///< none without a hoist
};

/// Every piece that carries load, weakest first, and after those the ones without a resistance, most loaded first.
///
/// Pieces that a rating of the scene names take it: `ratings` are matched by their words ("carabiner", "block",
/// "lead block", "ceiling point", "spreader", "cleat", "winch", "line", "fold line", "pick", "hook", "bracket",
/// "hinge", "lock pin", "caster", "caster plate"). The framing over the ceiling point is never judged.
std::vector<HardwareItem> hardware_list(const HardwareInputs& inputs);

/// Of the same list, only what hangs on the hoist's lines. Empty without a hoist.
std::vector<HardwareItem> hoist_hardware_list(const HardwareInputs& inputs);

}  // namespace stowpath
