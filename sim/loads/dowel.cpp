#include "sim/loads/dowel.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/trade/screws.h"
#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

constexpr double kPsi = 6894.757293168;
constexpr double kQuarterInch = 0.25 * kInch;
constexpr double kPlateBearing = 61'850 * kPsi;  // thin sheet steel, NDS Table 12M: from memory

// A p^2 + B p + C = 0 with C < 0.
double positive_root(double a, double b, double c) { return (-b + std::sqrt(b * b - 4 * a * c)) / (2 * a); }

struct Reductions {
  double bearing = 0.0, turning = 0.0, yielding = 0.0;  // modes I, II, III and IV
};

bool from_quarter_inch(double diameter) { return diameter >= kQuarterInch * (1.0 - 1e-9); }

Reductions reductions(const Dowel& d, bool across_grain) {
  const double grain = across_grain && from_quarter_inch(std::max(d.nominal, d.diameter)) ? 1.25 : 1.0;
  if (from_quarter_inch(d.diameter)) return {4.0 * grain, 3.6 * grain, 3.2 * grain};
  const double inches = d.diameter / kInch, all = (inches <= 0.17 ? 2.2 : 10 * inches + 0.5) * grain;
  return {all, all, all};
}

void check(const Dowel& d) {
  const bool positive = d.diameter > 0.0 && d.side > 0.0 && d.main > 0.0 && d.side_bearing > 0.0 &&
                        d.main_bearing > 0.0 && d.bending_yield > 0.0;
  if (!positive || !(d.gap >= 0.0)) throw std::invalid_argument("dowel_resistance: a size or stress is not positive");
}

}  // namespace

double dowel_resistance(const Dowel& d, bool across_grain) {
  check(d);
  const Reductions reduce = reductions(d, across_grain);
  const double qs = d.side_bearing * d.diameter, qm = d.main_bearing * d.diameter;
  const double yield = d.bending_yield * std::pow(d.diameter, 3) / 6;
  const double side = qs * d.side * d.side / 4, main = qm * d.main * d.main / 4;
  const double one = std::min(qs * d.side, qm * d.main);
  const double two = positive_root(1 / (4 * qs) + 1 / (4 * qm), d.side / 2 + d.gap + d.main / 2, -side - main);
  const double three_main = positive_root(1 / (2 * qs) + 1 / (4 * qm), d.gap + d.main / 2, -yield - main);
  const double three_side = positive_root(1 / (4 * qs) + 1 / (2 * qm), d.side / 2 + d.gap, -side - yield);
  const double four = positive_root(1 / (2 * qs) + 1 / (2 * qm), d.gap, -2 * yield);
  return std::min(
      {one / reduce.bearing, two / reduce.turning, std::min({three_main, three_side, four}) / reduce.yielding});
}

double dowel_bearing(double gravity, double diameter, bool across_grain) {
  if (!from_quarter_inch(diameter)) return 16'600 * std::pow(gravity, 1.84) * kPsi;
  if (!across_grain) return 11'200 * gravity * kPsi;
  return 6'100 * std::pow(gravity, 1.45) / std::sqrt(diameter / kInch) * kPsi;
}

double screw_bending_yield(double diameter) {
  const double inches = diameter / kInch;
  if (inches <= 0.142) return 100e3 * kPsi;
  if (inches <= 0.177) return 90e3 * kPsi;
  if (inches <= 0.236) return 80e3 * kPsi;
  if (inches <= 0.273) return 70e3 * kPsi;
  return (inches <= 0.344 ? 60e3 : 45e3) * kPsi;
}

namespace {

double one_screw(const Screws& screws, double gravity, double side, double side_bearing) {
  if (!deep_enough(screws)) return 0.0;
  const double root = screws.lag ? lag_root(screws.diameter) : wood_screw_root(screws.diameter);
  const double bearing = dowel_bearing(gravity, screws.diameter, true);
  return dowel_resistance(
      {root, side, screws.thread, 0.0, side_bearing, bearing, screw_bending_yield(screws.diameter), screws.diameter},
      true);
}

}  // namespace

bool deep_enough(const Screws& screws) {
  return screws.thread >= (screws.lag ? 4.0 : 6.0) * screws.diameter * (1.0 - 1e-9);
}

double screw_shear(const Screws& screws, double gravity, double plate) {
  constexpr double kLeastPlate = 0.001;
  return one_screw(screws, gravity, std::max(plate, kLeastPlate), kPlateBearing);
}

double screw_shear_in_wood(const Screws& screws, double gravity, double board) {
  return one_screw(screws, gravity, board, dowel_bearing(gravity, screws.diameter, true));
}

double screw_pull(const Screws& screws, double gravity) {
  const double per_length =
      screws.lag ? lag_withdrawal(gravity, screws.diameter) : wood_screw_withdrawal(gravity, screws.diameter);
  return per_length * screws.thread;
}

}  // namespace stowpath
