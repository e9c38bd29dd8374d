#pragma once

#include <array>
#include <string>
#include <vector>

#include "sim/clearance/pair_place.h"
#include "sim/clearance/verdict.h"
#include "sim/geometry/distance.h"
#include "sim/geometry/interval.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// What the dry fit proved of one move or state.
struct MoveResult {
  int index = 0;  ///< of the procedure's steps, from 1; 0: the standing stair
  MoveKind kind = MoveKind::lift;
  Verdict verdict = Verdict::undecided;
  double at_least = 0.0;               ///< proven: nothing comes closer, signed, meant contacts and zones left out [m]
  double at_most = 0.0;                ///< witnessed at `closest_at` [m]
  std::array<std::string, 2> closest;  ///< names of the two parts; empty where nothing is near at all
  Configuration closest_at;
  PairPlace closest_place;             ///< move -1 where nothing is near
};

enum class FindingKind {
  interference,  ///< two parts meet
  margin,        ///< they do not, but come closer than wanted
  seat,          ///< the hooks do not stay on the pipe, or too nearly not
  zone,          ///< a keep-clear zone is entered in a state that it names
  undecided,     ///< neither proven clear nor proven otherwise
  build          ///< a rule of building is broken
};

/// One thing for the builder to know: all places where one kind of part meets another.
struct Finding {
  std::string id;  ///< "F1", in order of gravity
  FindingKind kind = FindingKind::interference;
  std::array<std::string, 2> parts;  ///< of the stair, then of the room (or of the further section); [1] may be empty
  std::vector<std::string> also;     ///< other parts of the stair that meet the same thing, less badly
  std::array<PartKind, 2> part_kinds{};
  std::vector<int> moves;            ///< indices, ascending
  std::vector<MoveKind> move_kinds;  ///< beside `moves`
  std::vector<int> undecided_moves;  ///< further moves in which the same parts are neither proven clear nor to meet
  std::vector<MoveKind> undecided_kinds;  ///< beside `undecided_moves`
  IntervalSet stations;                   ///< of the stair's middle, where it happens [m]
  Configuration from, to;                 ///< first and last pose of it, in the procedure's order
  Configuration worst;
  double clearance = 0.0;                   ///< signed, witnessed at the worst [m]
  double unsettled = 0.0;                   ///< how much less it may be somewhere, within the proof's tolerance [m]
  double needed = 0.0;                      ///< the margin [m]
  double play = 0.0;                        ///< what play of hook or floor may take besides [m]
  int things = 0;                           ///< how many of the room's like things are met (brackets)
  int things_in_all = 0;                    ///< of how many
  Separation witness;                       ///< side view, at the worst pose [m]
  std::vector<std::vector<Vec2>> outlines;  ///< corners of the two parts there, for drawing [m]
  PairPlace place;                          ///< of the worst; move -1 where nothing that moves is met
  std::string note;                         ///< build and seat findings: their text; undecided: why

  double depth() const { return clearance < 0.0 ? -clearance : 0.0; }
  double proven_clearance() const { return clearance - unsettled; }  ///< nowhere in it do the parts come closer [m]
  double missing_margin() const { return needed - clearance; }
};

/// What of the loft's span can be served.
struct Reach {
  Interval span;         ///< the loft's stations [m]
  Interval rail_span;    ///< where ends and stops of the rail let the stair's middle be [m]
  IntervalSet standing;  ///< where the stair is proven to stand clear [m]
};

struct Work {
  long long distances = 0;  ///< exact distances evaluated
  long long rejects = 0;    ///< pairs turned away by their discs
  double seconds = 0.0;
};

struct DryFit {
  Verdict verdict = Verdict::undecided;
  std::vector<MoveResult> moves;
  std::vector<Finding> findings;  ///< gravest first
  Reach reach;
  Work work;
};

struct DryFitOptions {
  double resolution = 0.01 * 0.017453292519943295;  ///< pieces of motion smaller than this are not halved again [rad]
  double tolerance = 1e-4;                          ///< wanted at_most - at_least [m]
  bool least = true;  ///< work out the least clearance of each move; without it they stay at 1 m, beyond which none is
  double bound_scale = 1.0;  ///< 1; tests break the proof with it, see ProofOptions
};

/// Takes in what was found besides the clearances: puts all findings in order of gravity, numbers them anew and
/// gives the verdict on all of them.
void add_findings(std::vector<Finding> more, DryFit& fit);

/// The trial assembly: proves every move and state of the model, over the whole motion and every station meant.
DryFit dry_fit(const Model& model, const DryFitOptions& options = {});

}  // namespace stowpath
