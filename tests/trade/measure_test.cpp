#include "sim/trade/measure.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <string>

using namespace stowpath;

namespace {

// The factors are exact, so only rounding of the last bits is allowed for.
Approx exactly(double value) { return Approx(value).epsilon(1e-14); }

void check_refused(const Measure& measure) {
  CHECK_FALSE(measure.value);
  CHECK_FALSE(measure.problem.empty());
  CHECK_FALSE(measure.hint.empty());
}

}  // namespace

TEST_CASE("measure: a mass reads in kilograms and needs its unit", "[trade]") {
  CHECK(parse_mass("0.6 kg").value.value() == 0.6);
  CHECK(parse_mass("350g").value.value() == exactly(0.35));
  CHECK(parse_mass("12 lb").value.value() == exactly(5.44310844));  // the pound of 1959: 0.45359237 kg
  CHECK(parse_mass("7 1/2 lbs").value.value() == exactly(3.401942775));
  CHECK(parse_mass("8 oz").value.value() == exactly(0.226796185));
  for (const std::string text : {"12", "12 N", "1/2 kg", "2 lb 3 oz", "", "nan kg", "1e3 g", "1,5 kg"}) {
    INFO(text);
    check_refused(parse_mass(text));
  }
}

TEST_CASE("measure: a force reads in newtons and needs its unit", "[trade]") {
  CHECK(parse_force("2000 N").value.value() == 2000.0);
  CHECK(parse_force("8 kN").value.value() == 8000.0);
  CHECK(parse_force("450 lb").value.value() == exactly(450 * 0.45359237 * 9.80665));  // a pound under standard gravity
  CHECK(parse_force("450 lbf").value == parse_force("450 lb").value);
  for (const std::string text : {"450", "450 kg", "8 k", "", "inf N", "0x8 kN"}) {
    INFO(text);
    check_refused(parse_force(text));
  }
}

TEST_CASE("measure: a torque reads in newton metres and needs its unit", "[trade]") {
  CHECK(parse_torque("12 Nm").value.value() == 12.0);
  CHECK(parse_torque("12 N m").value.value() == 12.0);
  CHECK(parse_torque("9 ft-lb").value.value() == exactly(9 * 0.3048 * 4.4482216152605));  // both exact by definition
  CHECK(parse_torque("108 in-lb").value.value() == exactly(parse_torque("9 ft lbf").value.value()));
  for (const std::string text : {"12", "12 N", "12 m", "9 lb-ft", "9 ft", "", "12 Nm Nm", "12 N--m"}) {
    INFO(text);
    check_refused(parse_torque(text));
  }
}

TEST_CASE("measure: an angle reads in degrees, with or without its sign", "[trade]") {
  for (const std::string text : {"90", "90 deg", "90°", "90 degrees", "90.0°"}) {
    INFO(text);
    CHECK(parse_angle(text).value.value() == exactly(std::numbers::pi / 2));
  }
  CHECK(parse_angle("-22.5°").value.value() == exactly(-std::numbers::pi / 8));
  check_refused(parse_angle("1 rad"));
  check_refused(parse_angle("30° 15"));
}

TEST_CASE("measure: a plain number has no unit, exponent or second reading", "[trade]") {
  CHECK(parse_number("-2.5").value.value() == -2.5);
  CHECK(parse_number(".25").value.value() == 0.25);
  CHECK_FALSE(std::signbit(parse_number("-0").value.value()));
  for (const std::string text : {"1e3", "nan", "inf", "0x10", "2,5", "1,000", "3 mm", "1/2", "5.", "", "--1", "1 2"}) {
    INFO(text);
    check_refused(parse_number(text));
  }
}
