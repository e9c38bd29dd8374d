#pragma once

#include <optional>
#include <vector>

#include "sim/hoist/people.h"
#include "sim/hoist/pull.h"
#include "sim/hoist/winch.h"

namespace stowpath {

/// How what the lift asks compares with what is there.
enum class EffortVerdict {
  within,  ///< under every limit that counts
  over,    ///< over one of them at least
  cannot,  ///< hauling does not raise the stair all the way
  unknown  ///< what a powered winch gives is not said
};

/// Turns a minute of a cordless drill in its low gear, under load.
inline constexpr double kDrillSpeed = 300.0;
inline constexpr Source kDrillSpeedSource{"S-WINCH-drill", "our estimate of a cordless drill in low gear, under load",
                                          SourceStatus::judgement};

/// Who or what can lift the stair, from the pull through the whole lift.
struct HoistEffort {
  EffortVerdict verdict = EffortVerdict::within;
  PulledBy by = PulledBy::hand;
  double peak = 0.0;                  ///< of the raising pull at the hand or drum [N]
  Effort task = Effort::pull_down;    ///< what whoever hauls does
  std::vector<LimitMargin> limits;    ///< of the hand's pull, or of the force on the crank; weakest first
  std::vector<UnfitFigure> left_out;  ///< published figures that do not fit the task, weakest first
  bool slips = false;                 ///< the overload device lets go before the stair is up
  bool own_limit = false;             ///< the user's own limit counts alone
  int exceeded = 0;                   ///< of those that count
  double worst_excess = 0.0;          ///< over the weakest that counts; negative where under it [N]
  Interval hand_minutes;              ///< hand over hand, without a rest
  std::optional<WinchRun> winch;      ///< at the speed stated, or the usual one
  double input_speed = 0.0;           ///< of that run [1/min]
  bool speed_given = false;
  std::optional<WinchRun> drill;  ///< a crank winch turned by a drill instead
};

/// @param report  with at least one sample, or nothing is pulled: a peak of 0
/// @throws std::invalid_argument as winch_run does.
HoistEffort reckon_effort(const Scene& scene, const PullReport& report);

/// Whether the strongest, and whether even the weakest, of the listed people can: by the greatest figure of the strong
/// and the least of the weak.
struct WhoCan {
  bool strong = false;
  bool weak = false;
};
WhoCan who_can(const HoistEffort& effort);

/// Whether something other than the hand holds the load.
enum class LetGo { nothing, cleat, winch, friction };
struct Holding {
  LetGo by = LetGo::nothing;
  bool friction_everywhere = false;  ///< friction alone holds the stair at every pose looked at
};
Holding what_holds(const Scene& scene, const PullReport& report, const HoistEffort& effort);

}  // namespace stowpath
