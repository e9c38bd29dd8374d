#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "sim/hoist/drive_pull.h"
#include "sim/hoist/rope_geometry.h"
#include "sim/loads/climber.h"
#include "sim/loads/load_case.h"
#include "sim/loads/rail.h"
#include "sim/mechanism/model.h"
#include "sim/scene/scene.h"
#include "sim/trade/source.h"

namespace stowpath {

/// What the hoist is doing.
enum class HoistDoing {
  raising,
  lowering,
  held,     ///< it stands still for a moment, and friction is not counted on
  parked,   ///< at rest for days, over whoever is below
  snagged   ///< the stair catches on something, and whoever or whatever pulls goes on
};

/// The hoist at one moment of its use: what its lines do to every piece, without the dynamic factor.
struct HoistState {
  std::string where;  ///< "raising, lean 62°"
  HoistDoing doing = HoistDoing::raising;
  double line = 0.0;      ///< tension of the hardest pulled segment [N]
  double dead_end = 0.0;  ///< of the segment that is tied [N]
  double hand = 0.0;      ///< at the hand, cleat or drum [N]
  Vec3 ceiling;           ///< force on the ceiling point [N]
  Vec3 pick;              ///< of the line on the pick, all picks together [N]
  double pick_angle = 0.0;  ///< of that force off the line square to its section [rad]
  std::vector<Vec3> leads;       ///< on each lead sheave [N]
  Vec2 hooks;                    ///< pipe on all hooks: out, up [N]
  std::vector<double> hinges;    ///< on the hinges of each joint, both sides together [N]
  std::vector<double> moments;   ///< that each pinned joint passes on, both sides together; 0 where unpinned [N m]
  double fold_line = 0.0;        ///< tension; 0 where slack or not there [N]

  /// Its loads take the scene's dynamic factor.
  bool moving() const { return doing == HoistDoing::raising || doing == HoistDoing::lowering; }
};

/// Poses of the lift of which no force is known.
struct PosesLeftOut {
  int dead_centre = 0;   ///< or where a foot binds: no force there means anything
  int slack = 0;         ///< the line would have to push: the stair moves by itself
  int cannot_lift = 0;   ///< hauling no longer raises the stair
  int all() const { return dead_centre + slack + cannot_lift; }
};

/// Every state of the hoist that was looked at.
struct HoistLoads {
  std::vector<HoistState> states;
  DrivePull drive;        ///< what hauls, should the stair catch
  PosesLeftOut left_out;  ///< of them no state tells but the one in which the stair catches
};

enum class LoadKind { force, moment, stress, length };  ///< N, N m, Pa or m

/// One piece that carries load.
struct HardwareItem {
  std::string name;  ///< "lock pin in the wood"
  LoadKind kind = LoadKind::force;
  double load = 0.0;                   ///< worst, `dynamic` included [as `kind` says]
  std::optional<double> resistance;    ///< rating or computed; none: not known, or not ours to judge [as load]
  std::string where;                   ///< worst pose or place of the climber
  std::string basis;                   ///< what the resistance is
  std::optional<SourceStatus> status;  ///< of the basis; none for the user's own rating or where there is no resistance
  std::string note;
  double dynamic = 1.0;  ///< factor already in the load, for the jerks of a moving line
  double reserve = 1.0;  ///< by how much what breaks it is more than what it may carry for good, as far as that is known
  bool ultimate = false;  ///< the resistance is what breaks it
  double not_to_break = 0.0;  ///< without a resistance: under this it must not break [as load]
  bool judged = true;     ///< false: a load for others to accept, which no verdict counts

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

/// Every piece by its name, each in its own worst state: where it bears the fewest times its load, or gets most where its
/// resistance is not known. A state more can only make a piece worse.
class Pieces {
 public:
  /// Takes what one state does to pieces.
  void look(std::vector<HardwareItem> state);
  /// The same in a state that is held against what breaks a piece.
  void look_ultimate(std::vector<HardwareItem> state);
  /// Weakest first, and after those the ones without a resistance, most loaded first.
  std::vector<HardwareItem> weakest_first() const;

 private:
  std::vector<HardwareItem> items_;  // in the order first met
  std::map<std::string, std::size_t> place_;
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
