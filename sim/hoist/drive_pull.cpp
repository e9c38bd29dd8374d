#include "sim/hoist/drive_pull.h"

#include <algorithm>

#include "sim/hoist/winch.h"
#include "sim/trade/strength.h"

namespace stowpath {

namespace {

double greatest(const std::vector<StrengthFigure>& figures) {
  double most = 0.0;
  for (const StrengthFigure& figure : figures) most = std::max(most, figure.force);
  return most;
}

/// At the line, for a torque at the winch's input [N].
double line_pull(const Hoist& hoist, double torque) {
  const Winch& winch = *hoist.winch;
  const double lever = 0.5 * drum_layer_diameter(winch.drum, hoist.line.diameter, 1);
  return torque * winch.ratio * winch_efficiency(winch).share / lever;
}

std::optional<double> unlimited_pull(const Hoist& hoist) {
  if (hoist.pulled_by == PulledBy::hand) return greatest(hand_pull_figures(Person::strong));
  if (!hoist.winch) return std::nullopt;
  if (hoist.pulled_by == PulledBy::crank_winch && hoist.winch->crank)
    return line_pull(hoist, *hoist.winch->crank * greatest(crank_figures(Person::strong)));
  return hoist.winch->torque ? std::optional(line_pull(hoist, *hoist.winch->torque)) : std::nullopt;
}

}  // namespace

std::optional<double> drive_pull(const Scene& scene) {
  if (!scene.hoist) return std::nullopt;
  const std::optional<double> most = unlimited_pull(*scene.hoist);
  const std::optional<double>& clutch = scene.hoist->overload;
  if (!most || !clutch) return most ? most : clutch;
  return std::min(*most, *clutch);
}

}  // namespace stowpath
