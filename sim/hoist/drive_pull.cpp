#include "sim/hoist/drive_pull.h"

#include "sim/hoist/people.h"
#include "sim/hoist/winch.h"
#include "sim/trade/strength.h"

namespace stowpath {

namespace {

constexpr Source kGreatestPull{"S-HUM-vert", "the greatest published pull that fits", SourceStatus::memory};
constexpr Source kGreatestCrank{"S-HUM-crank30", "the greatest published force on a crank", SourceStatus::verified};

DrivePull by_hand(Effort task) {
  return {greatest_figure(task), true, false, "a hand at the strongest published pull that fits", kGreatestPull};
}

DrivePull by_crank(const Hoist& hoist) {
  const Winch& winch = *hoist.winch;
  const double torque = winch.crank.value_or(0.0) * greatest_figure(Effort::crank);
  return {pull_of_torque(winch, hoist.line.diameter, torque, best_winch_efficiency(winch).share),
          winch.crank.has_value(), false, "a crank at the strongest published force, the drum bare", kGreatestCrank};
}

DrivePull by_motor(const Hoist& hoist) {
  const Winch& winch = *hoist.winch;
  if (winch.stall) return {*winch.stall, true, false, "a drive that stalls", std::nullopt};
  const double torque = winch.torque.value_or(0.0);
  return {pull_of_torque(winch, hoist.line.diameter, torque, best_winch_efficiency(winch).share), false, false,
          "a drive whose stall is not said", std::nullopt};
}

DrivePull unlimited(const Scene& scene) {
  const Hoist& hoist = *scene.hoist;
  if (!hoist.winch || hoist.pulled_by == PulledBy::hand) return by_hand(haul_task(scene));
  return hoist.pulled_by == PulledBy::crank_winch ? by_crank(hoist) : by_motor(hoist);
}

}  // namespace

DrivePull drive_pull(const Scene& scene) {
  const DrivePull most = unlimited(scene);
  const std::optional<double>& lets_through = scene.hoist->overload;
  if (!lets_through || (most.known && most.force <= *lets_through)) return most;
  return {*lets_through, true, true, "the overload device, which lets no more through", std::nullopt};
}

double fold_line_snag() { return greatest_figure(Effort::pull_down); }

}  // namespace stowpath
