#include "sim/trade/measure.h"

#include <initializer_list>
#include <numbers>

#include "sim/trade/scanner.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kOunce = kPound / 16.0;         // [kg]

struct Unit {
  std::string_view name;
  double in_si = 1.0;
  bool takes_fractions = false;
};

double scaled(const Scanner& scan, const Amount& amount, const std::string& name, std::initializer_list<Unit> units,
              const std::string& hint) {
  for (const Unit& unit : units) {
    if (unit.name != name) continue;
    if (amount.fraction && !unit.takes_fractions) {
      throw Refusal{scan.quoted() + " has a fraction where a decimal is wanted", "write a decimal: 0.5"};
    }
    return amount.value * unit.in_si;
  }
  throw Refusal{scan.quoted() + (name.empty() ? " has no unit" : " has the unit " + name + ", which does not fit"),
                hint};
}

double with_unit(Scanner& scan, std::initializer_list<Unit> units, const std::string& hint) {
  const double sign = scan.sign();
  const Amount amount = scan.amount();
  const double value = scaled(scan, amount, scan.unit(), units, hint);
  scan.finish();
  return sign * value;
}

}  // namespace

Measure parse_mass(std::string_view text) {
  return measured(text, [](Scanner& scan) {
    return with_unit(scan,
                     {{"kg", 1.0}, {"g", 1e-3}, {"lb", kPound, true}, {"lbs", kPound, true}, {"oz", kOunce, true}},
                     "write a mass in kg, g, lb or oz: 0.6 kg, 12 lb");
  });
}

Measure parse_force(std::string_view text) {
  return measured(text, [](Scanner& scan) {
    return with_unit(
        scan,
        {{"n", 1.0}, {"kn", 1e3}, {"lb", kPoundForce, true}, {"lbs", kPoundForce, true}, {"lbf", kPoundForce, true}},
        "write a force in N, kN or lbf: 8 kN, 450 lbf");
  });
}

Measure parse_torque(std::string_view text) {
  constexpr double kInchPound = kInch * kPoundForce, kFootPound = 12 * kInchPound;
  return measured(text, [](Scanner& scan) {
    const double sign = scan.sign();
    const Amount amount = scan.amount();
    std::string unit = scan.unit();
    scan.separator();
    unit += scan.unit();
    const double value = scaled(scan, amount, unit,
                                {{"nm", 1.0},
                                 {"ftlb", kFootPound, true},
                                 {"ftlbf", kFootPound, true},
                                 {"inlb", kInchPound, true},
                                 {"inlbf", kInchPound, true}},
                                "write a torque in Nm, ft-lb or in-lb: 12 Nm, 9 ft-lb");
    scan.finish();
    return sign * value;
  });
}

Measure parse_angle(std::string_view text) {
  constexpr double kDegree = std::numbers::pi / 180.0;
  return measured(text, [](Scanner& scan) {
    return with_unit(
        scan, {{"", kDegree, true}, {"deg", kDegree, true}, {"degree", kDegree, true}, {"degrees", kDegree, true}},
        "write an angle in degrees: 70 or 70 deg");
  });
}

Measure parse_number(std::string_view text) {
  return measured(text, [](Scanner& scan) {
    return with_unit(scan, {{"", 1.0}}, "write a plain number, without a unit");
  });
}

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(' '), last = text.find_last_not_of(' ');
  return first == std::string::npos ? "" : text.substr(first, last - first + 1);
}

}  // namespace stowpath
