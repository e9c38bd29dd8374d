#include "sim/hoist/effort.h"

#include <algorithm>

namespace stowpath {

namespace {

constexpr double kWholeTurnsOnly = 1e-9;  // a margin below this is rounding, not strength [N]

bool counts(const HoistEffort& effort, const PersonLimit& limit) {
  return !effort.own_limit || limit.source.id == "given";
}

// Limits stand weakest first, so the first that counts decides by how much the force is over.
void compare(HoistEffort& effort, double force, const std::vector<PersonLimit>& limits) {
  effort.limits = limit_margins(force, limits);
  bool first = true;
  for (const LimitMargin& margin : effort.limits) {
    if (!counts(effort, margin.limit)) continue;
    if (first) effort.worst_excess = -margin.margin;
    first = false;
    if (margin.margin < -kWholeTurnsOnly) ++effort.exceeded;
  }
  effort.verdict = effort.exceeded > 0 ? EffortVerdict::over : EffortVerdict::within;
}

double usual_speed(PulledBy by) { return by == PulledBy::crank_winch ? kUsualCrankingRate : kDrillSpeed; }

void add_winch(const Scene& scene, const PullReport& report, HoistEffort& effort) {
  const Hoist& hoist = *scene.hoist;
  const Winch& winch = *hoist.winch;
  const auto run = [&](double speed) {
    return winch_run(winch, hoist.line.diameter, std::max(0.0, report.haul_length), effort.peak, speed);
  };
  effort.speed_given = winch.speed.has_value();
  effort.input_speed = winch.speed.value_or(usual_speed(effort.by));
  effort.winch = run(effort.input_speed);
  if (effort.by == PulledBy::crank_winch) {
    effort.drill = run(kDrillSpeed);
    compare(effort, effort.winch->handle_force.value_or(0.0), crank_limits(hoist.hand_limit));
    return;
  }
  const std::optional<double> given = effort.winch->torque_given;
  effort.verdict =
      !given ? EffortVerdict::unknown : (effort.winch->torque > *given ? EffortVerdict::over : EffortVerdict::within);
}

bool lifts(const PullReport& report) {
  return std::none_of(report.events.begin(), report.events.end(),
                      [](const PullEvent& event) { return event.kind == PullEventKind::cannot_lift; });
}

}  // namespace

HoistEffort reckon_effort(const Scene& scene, const PullReport& report) {
  HoistEffort effort;
  const Hoist& hoist = *scene.hoist;
  effort.by = hoist.winch ? hoist.pulled_by : PulledBy::hand;
  effort.own_limit = hoist.hand_limit.has_value();
  effort.task = effort.by == PulledBy::crank_winch ? Effort::crank : haul_task(scene);
  if (effort.by != PulledBy::powered_winch) effort.left_out = unfit_figures(effort.task);
  if (report.peak_raising) effort.peak = std::max(0.0, report.samples[*report.peak_raising].hand_raising);
  effort.hand_minutes = hand_over_hand_minutes(std::max(0.0, report.haul_length));
  if (effort.by == PulledBy::hand) {
    compare(effort, effort.peak, hand_pull_limits(effort.task, hoist.hand_limit));
  } else {
    add_winch(scene, report, effort);
  }
  effort.slips = hoist.overload && effort.peak > *hoist.overload;
  if (!lifts(report) || effort.slips) effort.verdict = EffortVerdict::cannot;
  return effort;
}

WhoCan who_can(const HoistEffort& effort) {
  WhoCan who{false, true};
  for (const LimitMargin& margin : effort.limits) {
    if (margin.limit.person == Person::strong) who.strong = who.strong || margin.margin >= 0.0;
    if (margin.limit.person == Person::weak) who.weak = who.weak && margin.margin >= 0.0;
  }
  return who;
}

Holding what_holds(const Scene& scene, const PullReport& report, const HoistEffort& effort) {
  Holding holding;
  holding.friction_everywhere =
      !report.samples.empty() && std::all_of(report.samples.begin(), report.samples.end(), [](const PullSample& s) {
        return s.slack || (s.lets_down && s.hand_lowering <= 0.0);
      });
  if (scene.hoist->cleat) {
    holding.by = LetGo::cleat;
  } else if (effort.winch && effort.winch->hold == WinchHold::friction) {
    holding.by = LetGo::winch;
  } else if (holding.friction_everywhere) {
    holding.by = LetGo::friction;
  }
  return holding;
}

}  // namespace stowpath
