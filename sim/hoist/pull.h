#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/hoist/pull_pose.h"

namespace stowpath {

/// One pose of the lift and what the line needs there.
struct PullSample {
  std::size_t move = 0;     ///< index in Model::moves
  std::size_t segment = 0;  ///< of that move
  double u = 0.0;           ///< on that segment
  double progress = 0.0;    ///< of that move, its segments given equal shares
  Configuration pose;
  double hand_raising = 0.0;        ///< at the hand; 0 or less: the line is slack [N]
  double hand_holding = 0.0;        ///< without any friction [N]
  double hand_lowering = 0.0;       ///< 0 or less: friction holds the stair by itself [N]
  std::vector<double> segments;     ///< tension of each of the line's segments, raising, dead end first [N]
  Reactions reactions;              ///< raising; tension[1] is the fold line's hand where that is taut
  std::optional<double> fold_pull;  ///< at the fold line's hand, going as the move goes; none: slack or not there [N]
  std::optional<double> turning;    ///< moment that something must turn the moving hinge's lower section with [N m]
  double line_length = 0.0;         ///< dead end to hand, knot and tail left out [m]
  double fold_length = 0.0;         ///< of the fold line; 0 without one [m]
  double side_out = 0.0;            ///< the line's pull on the stair, part along out, raising [N]
  double side_along = 0.0;          ///< and along the rail, positive to greater stations [N]
  double line_lever = 0.0;          ///< moment of the line about the pivot for 1 N at the hand, without friction [m]
  double centre_out = 0.0;          ///< the whole stair's centre of mass beyond the pivot [m]
  double energy = 0.0;              ///< potential, from the pivot's height [J]
  double hauling = 0.0;             ///< how fast the line shortens [m per unit of u]
  bool solvable = false;            ///< false: a dead centre; no force here means anything
  bool slack = false;  ///< the line would have to push: forces here are those of a stair held by it, and moot
  bool on_floor = false;
  bool raises = false;     ///< the move raises the lean there, and with it the stair's potential energy
  bool holds = false;      ///< the same as `solvable`, of hand_holding
  bool lets_down = false;  ///< and of hand_lowering
};

enum class PullEventKind {
  slack_begins,  ///< from here the stair would move by itself
  slack_ends,
  line_over_pivot,    ///< the line passes through the pipe's axis
  centre_over_pivot,  ///< the centre of mass passes over (or under) the pipe's axis
  foot_leaves_floor,
  swings_plumb,  ///< the lower section swings free until it hangs plumb
  cannot_lift,   ///< hauling in no longer raises the stair
  hook_lifts,    ///< the pipe would have to pull the hooks down: the stair lifts off it unless their curl holds
  turns_over,    ///< the same with the foot in the air: the stair turns over about its pick unless the curl holds
  foot_binds,    ///< hauled in, the foot would not slide: the lower section wedges against the floor's friction
  foot_sticks    ///< let down, the foot does not slide out: the lower section props the joint
};
std::string_view event_text(PullEventKind kind);

/// Something that happens on the way.
struct PullEvent {
  PullEventKind kind = PullEventKind::slack_begins;
  std::size_t move = 0;  ///< index in Model::moves
  double progress = 0.0;
  Configuration pose;
};

/// What friction took, and where [J].
struct PullLoss {
  std::string place;  ///< "hoist line's sheaves", "hook on the pipe", ...
  double energy = 0.0;
};

/// Where the work of a whole lift went: hand + fold_hand + turning = gain + losses.
struct WorkBook {
  double hand = 0.0;       ///< done at the hoist line's hand [J]
  double fold_hand = 0.0;  ///< done at the fold line's hand [J]
  double turning = 0.0;    ///< done by whatever turns sections that no line turns; negative: it holds back [J]
  double gain = 0.0;       ///< of potential energy [J]
  std::vector<PullLoss> losses;
  double lost() const;  ///< all losses together [J]
};

/// What another rigging would need.
struct PullChange {
  std::string text;          ///< "one more part of line: 5", "pick 0.18 m further along", ...
  double peak = 0.0;         ///< of the raising pull [N]
  double benefit = 0.0;      ///< how much less than as rigged; negative: more [N]
  double haul_length = 0.0;  ///< [m]
  double side_pull = 0.0;    ///< greatest sideways part of the line's pull on the stair [N]
  bool lifts = true;         ///< false: there it comes to a pose where hauling no longer raises the stair
};

struct PullOptions {
  double step = 0.0043633231299858;  ///< between poses, of the joint that turns most: a quarter of a degree [rad]
  double hinge_radius = 0.005;       ///< of the hinges' pins, which the scene does not say; judgement [m]
  FrictionEnd friction = FrictionEnd::mean;
  bool changes = true;  ///< work out what other riggings would need
};

struct PullReport {
  Rigging line;
  std::optional<Rigging> fold_line;
  FrictionChoice friction;
  std::vector<PullSample> samples;
  std::optional<std::size_t> peak_raising, peak_holding, peak_lowering, peak_fold, peak_side;  ///< in samples
  double least_friction_peak = 0.0;  ///< raising, all coefficients at the low end of their ranges [N]
  double most_friction_peak = 0.0;   ///< and at the high end [N]
  double haul_length = 0.0;          ///< rope hauled in over the whole lift [m]
  double rope_needed = 0.0;          ///< with everything down, knot and tail included [m]
  double fold_haul_length = 0.0;     ///< [m]
  double fold_rope_needed = 0.0;     ///< [m]
  WorkBook work;                     ///< with friction
  std::vector<PullEvent> events;     ///< in order
  std::vector<PullChange> changes;   ///< most benefit first
  std::vector<std::string> assumptions;
};

/// The pull through every move that is done on the hoist line, pose by pose, and its peaks, refined between the poses.
/// @throws std::invalid_argument without a hoist with a ceiling point, or a step that is not positive.
/// @note Quasi-static: nothing is left over for starting, jerks or swinging.
PullReport pull_through(const Scene& scene, const Model& model, const PullOptions& options = {});

/// The walk alone: samples, peaks, lengths and events.
PullReport walk_through(const Scene& scene, const Model& model, const PullOptions& options);

/// One pose in full.
PullSample sample_pull(const LiftRig& rig, const Model& model, std::size_t move, std::size_t segment, double u);

/// Whether a move's forces come from the hoist line: hooked on, and off the working pose.
bool is_hauled(const Move& move);

}  // namespace stowpath
