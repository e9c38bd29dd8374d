#include "sim/trade/screws.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kEndGrain = 0.75;  // C_eg

struct Tip {
  double diameter, length;  // [in]
};
constexpr std::array kTips{Tip{0.25, 5.0 / 32}, Tip{0.3125, 3.0 / 16}, Tip{0.375, 7.0 / 32}, Tip{0.4375, 9.0 / 32},
                           Tip{0.5, 5.0 / 16},  Tip{0.625, 13.0 / 32}, Tip{0.75, 1.0 / 2}};

struct Root {
  double diameter, root;  // [in]
};
constexpr std::array kLagRoots{Root{0.25, 0.173}, Root{0.3125, 0.227}, Root{0.375, 0.265}, Root{0.4375, 0.328},
                               Root{0.5, 0.371},  Root{0.625, 0.471},  Root{0.75, 0.579}};
constexpr std::array kWoodScrewRoots{Root{0.138, 0.113}, Root{0.151, 0.122}, Root{0.164, 0.131}, Root{0.177, 0.142},
                                     Root{0.190, 0.152}, Root{0.216, 0.171}, Root{0.242, 0.196}, Root{0.268, 0.209},
                                     Root{0.294, 0.232}, Root{0.320, 0.255}, Root{0.372, 0.298}};

/// In proportion between listed sizes; beyond them as the nearest, in proportion to its diameter.
double root_by(std::span<const Root> listed, double diameter) {
  const double inches = diameter / kInch;
  if (inches <= listed.front().diameter) return diameter * listed.front().root / listed.front().diameter;
  for (std::size_t i = 1; i < listed.size(); ++i) {
    const Root &a = listed[i - 1], &b = listed[i];
    if (inches <= b.diameter)
      return std::lerp(a.root, b.root, (inches - a.diameter) / (b.diameter - a.diameter)) * kInch;
  }
  return diameter * listed.back().root / listed.back().diameter;
}

double lag_per_metre(double pounds_per_inch, double gravity, double diameter) {
  return pounds_per_inch * std::pow(gravity, 1.5) * std::pow(diameter / kInch, 0.75) * kPoundPerInch;
}

double wood_screw_per_metre(double pounds_per_inch, double gravity, double diameter) {
  return pounds_per_inch * gravity * gravity * diameter / kInch * kPoundPerInch;
}

}  // namespace

double lag_withdrawal(double gravity, double diameter, Grain grain) {
  return lag_per_metre(1800.0, gravity, diameter) * (grain == Grain::end ? kEndGrain : 1.0);
}

double wood_screw_withdrawal(double gravity, double diameter, Grain grain) {
  return grain == Grain::end ? 0.0 : wood_screw_per_metre(2850.0, gravity, diameter);
}

double lag_withdrawal_ultimate(double gravity, double diameter) { return lag_per_metre(8100.0, gravity, diameter); }

double wood_screw_withdrawal_ultimate(double gravity, double diameter) {
  return wood_screw_per_metre(15700.0, gravity, diameter);
}

double wood_screw_diameter(int number) { return (0.060 + 0.013 * number) * kInch; }

double lag_root(double diameter) { return root_by(kLagRoots, diameter); }

double wood_screw_root(double diameter) { return root_by(kWoodScrewRoots, diameter); }

double lag_thread(double length) { return std::min({0.5 * length + 0.5 * kInch, 6.0 * kInch, length}); }

double lag_tip(double diameter) {
  constexpr double kRounding = 1e-9;  // [m]
  for (const Tip& tip : kTips) {
    if (diameter <= tip.diameter * kInch + kRounding) return tip.length * kInch;
  }
  return diameter * kTips.back().length / kTips.back().diameter;
}

double lag_thread_in_member(double length, double diameter, double through) {
  return std::max(0.0, std::min(lag_thread(length), length - through) - lag_tip(diameter));
}

}  // namespace stowpath
