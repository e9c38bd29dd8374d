#include "sim/trade/screws.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kEndGrain = 0.75;  // C_eg

struct Tip {
  double diameter, length;  // [in]
};
constexpr std::array kTips{Tip{0.25, 5.0 / 32}, Tip{0.3125, 3.0 / 16}, Tip{0.375, 7.0 / 32}, Tip{0.4375, 9.0 / 32},
                           Tip{0.5, 5.0 / 16},  Tip{0.625, 13.0 / 32}, Tip{0.75, 1.0 / 2}};

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
