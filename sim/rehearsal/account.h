#pragma once

#include <optional>
#include <string>
#include <vector>

namespace stowpath {

/// How good the numbers of a rehearsal are.
struct RehearsalBounds {
  double step = 0.0;               ///< of the run reported [s]
  double energy_gain = 0.0;        ///< most energy that came from nowhere [J]
  double energy_scale = 0.0;       ///< to lay it beside: the weight times the highest rise, plus the crew's work [J]
  bool too_swift_again = false;    ///< it could not be run again at half the step: a rope bounced too swiftly
  bool compared = false;           ///< run again at half the step, with these differences:
  double pull = 0.0;               ///< of the peak pulls [N]
  double lean = 0.0;               ///< of the leans at the moves' ends, of what swings the middles of its swing [rad]
  double swing = 0.0;              ///< of how wide the last section still swings there [rad]
  std::optional<double> speed{};   ///< of the aftermath's top speed; none: there was none in one of them [m/s]
  std::optional<double> push{};    ///< of the hand's greatest pushes along the rail; none: nothing was rolled [N]
  /// What happened in one of the two runs alone: here, and at half the step. A recording does not keep it; of the latter
  /// it keeps the trouble.
  std::vector<std::string> only_here{}, only_finer{};
  double touch_gap = 0.0;  ///< farthest that two parts were apart by exact distance when the world saw them touch [m]
};

/// What a builder has to look into.
enum class TroubleKind {
  refused,          ///< nothing was rehearsed: a rope is too stiff for the world
  moves_off,        ///< `what`: what brought it about; `other`, "the foot", reaches the speed `value` [m/s]
  stays_up,         ///< `what`: what was let go or pulled out; it stays where it is, for now
  not_tried,        ///< `what` was asked for and never came, and why
  gave_up,          ///< `what`: why it was not carried through
  stands_otherwise, ///< than it stood before it was raised
  hooks_off,        ///< the hooks come off the pipe
  roll_binds,       ///< `also`: height of the hand [m]
  roll_too_weak,    ///< `value`: push [N]; `also`: height of the hand [m]
  roll_sticks,      ///< the same, on its way
  roll_meets,       ///< `what` meets `other`
  roll_leaves_pipe,
  roll_not_tried,
  touches,      ///< `value`: how many pairs of parts
  zones,        ///< `value`: how many parts enter a keep-clear zone
  overlaps,     ///< `value`: how many pairs of parts overlap from the start, and do not push each other
  at_half_step, ///< `what` the run at half the step has besides
  stalls,       ///< `value`: how long the crew cannot haul [s]
  hooks_lift,   ///< `value`: how far, within their bend [m]
  slack,        ///< `value`: how many spells
  swings_loose, ///< `value`: how far a section swings when its pin is pulled [rad]
  lands_hard    ///< `value`: speed of the foot [m/s]
};

struct Trouble {
  TroubleKind kind = TroubleKind::refused;
  std::string what, other;
  double value = 0.0, also = 0.0;
};

/// What is to be said of a rehearsal before anything else: what is wrong, and how far its numbers can be trusted.
struct Account {
  RehearsalBounds bounds;
  std::vector<Trouble> troubles;      ///< gravest first
  std::vector<std::string> cautions;  ///< what the world leaves out, and what was taken for granted
};

}  // namespace stowpath
