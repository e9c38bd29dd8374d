#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/scene/scene.h"
#include "sim/trade/source.h"
#include "sim/trade/strength.h"

namespace stowpath {

/// A force to lay a pull or a handle's force beside.
struct PersonLimit {
  std::string name;    ///< "two hands (guideline, sustained)"
  double force = 0.0;  ///< [N]
  Person person = Person::neither;
  Source source;
  Hands hands = Hands::not_said;
  Lasting lasting = Lasting::not_said;
};

/// How whoever hauls by hand pulls at the line: down where it comes to the hand from above, up where from below, else
/// level. It counts as from above or below from 45 degrees on (a judgement).
/// @pre the scene has a hoist
Effort haul_task(const Scene& scene);

/// For a rope pulled by hand, weakest first: the published figures of weak and strong that fit the task, our two
/// suggestions, and the user's own limit where there is one [N].
std::vector<PersonLimit> hand_pull_limits(Effort task, std::optional<double> own = std::nullopt);

/// The same for the handle of a crank, without suggestions of ours.
std::vector<PersonLimit> crank_limits(std::optional<double> own = std::nullopt);

/// A force beside one limit. What follows from the numbers is for the reader to say.
struct LimitMargin {
  PersonLimit limit;
  double margin = 0.0;  ///< limit less force; negative where the force is greater [N]
  double share = 0.0;   ///< force over limit
};

std::vector<LimitMargin> limit_margins(double force, std::span<const PersonLimit> limits);

/// Rope that a person takes in hand over hand, by our judgement. [m/min]
inline constexpr Interval kHandOverHand{6.0, 15.0};
inline constexpr Source kHandOverHandSource{
    "S-HUM-rate", "our estimate: half a metre a stroke, 12 to 30 strokes a minute", SourceStatus::judgement};

/// Minutes that a haul takes hand over hand, from the quickest to the slowest, without a rest.
/// @param haul_length  [m]
Interval hand_over_hand_minutes(double haul_length);

}  // namespace stowpath
