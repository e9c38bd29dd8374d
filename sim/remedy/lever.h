#pragma once

#include <string>
#include <vector>

#include "sim/clearance/dry_fit.h"
#include "sim/mechanism/model.h"
#include "sim/scene/draft.h"
#include "sim/scene/scene.h"

namespace stowpath {

/// What a builder could do about a finding, by the measurement that it changes.
enum class ChangeKind {
  stop_move,           ///< end a lift, fold, drag or hang at another angle
  trim_curl,           ///< cut arc off the hooks' ends
  cut_tip,             ///< shorten the hooks' straight tips
  shorten_shank,       ///< of the hooks
  cut_side_rails,      ///< above the pivot
  set_treads_back,     ///< less overhang
  shorten_scab,        ///< of a lock
  lower_handrail,      ///< towards the side rails
  move_extra,          ///< along its section
  move_pick,           ///< along its section
  move_ceiling_point,  ///< out or in
  move_lead,           ///< the first lead sheave
  move_home,           ///< with the ceiling point and lead over it
  shift_bracket,       ///< one of a list
  shift_brackets,      ///< the whole pattern
  shift_joint,         ///< a pipe joint
  move_obstacle,
  shift_hinge,    ///< along, the stair's length kept
  set_hinge_off,  ///< farther off its face
  lower_casters,  ///< along the last section
  longer_curl,    ///< other hooks, bent on
  lower_arms,     ///< other brackets, whose arms run lower
  shift_treads    ///< the first one's height
};

enum class Way { less, more, out, in, up, down, left, right };

/// How much trouble a change is; they are offered in this order, the smallest of equal ones first.
enum class Labour {
  setting,    ///< nothing is made or moved: the work is done otherwise
  trimming,   ///< a cut, or a screw set anew, on the stair itself
  fixing,     ///< other holes in the building, or a small thing moved
  furniture,  ///< a large thing moved
  rebuilding  ///< another stair, or other hardware
};

/// One number of the file that a change moves: by `rate` for each unit of the amount.
struct LeverValue {
  std::string key;
  double rate = 1.0;
};

/// A change with one measure: its amount, counted from what the file says, always upwards from 0.
struct Lever {
  ChangeKind kind = ChangeKind::stop_move;
  Way way = Way::more;
  Labour labour = Labour::setting;
  std::string thing;  ///< the obstacle, the extra, the kind of move; else empty
  int number = 0;     ///< of the step, bracket, joint, hinge or lock, from 1; 0: none
  std::vector<LeverValue> values;
  bool angle = false;   ///< amounts are in rad, else in m
  double step = 0.001;  ///< the amounts tried are multiples of it
  double most = 0.0;    ///< the greatest amount tried
  int first = 1;        ///< steps: no smaller amount can work
  int stride = 1;       ///< steps from one amount to the next where nothing better is known
  /// No surface moves by more than this for each unit of the amount, seen from any other, along the whole of every
  /// move; 0: not known [m per m, m per rad].
  double reach = 0.0;
};

/// What levers are made from.
struct LeverSite {
  const SceneDraft& draft;
  const Scene& scene;
  const Model& model;

  double length_step() const;  ///< 1 mm, or 1/16 in where the file's units are inches [m]
};

/// All single changes of a measurement that might cure the finding, and that the file has a place for. Keep-clear
/// zones, margins and tolerances are the user's wishes: no lever moves them.
std::vector<Lever> levers_for(const LeverSite& site, const Finding& finding);

// The catalogue by subject: each adds its levers.
void add_hook_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers);
void add_rail_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers);
void add_hoist_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers);
void add_obstacle_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers);
void add_procedure_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers);
void add_stair_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers);

/// A lever of lengths on the site's step. @param reach  see Lever
Lever length_lever(const LeverSite& site, ChangeKind kind, Way way, Labour labour, double most, double reach);

/// Whether the file gives all numbers that the lever moves.
bool has_values(const LeverSite& site, const Lever& lever);

/// The same lever the other way.
Lever reversed(Lever lever, Way way);

/// Whether the finding is, in part, of a stair that stands or rolls over every station.
bool over_stations(const Model& model, const Finding& finding);

/// Whether the part named first or one of those named besides is told as `name`, or is the part itself.
bool concerns(const Finding& finding, const std::string& name);

}  // namespace stowpath
