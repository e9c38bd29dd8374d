#include "sim/scene/rewrite.h"

#include <catch2/catch.hpp>

#include "sim/trade/us_units.h"

using namespace stowpath;

namespace {

std::string inches(std::string_view old, double to_inches) {
  return rewritten_number(*find_key("rail.at.up"), old, to_inches * kInch, LengthUnit::inch).value_or("refused");
}

std::string millimetres(std::string_view old, double to_millimetres) {
  return rewritten_number(*find_key("rail.at.up"), old, to_millimetres * 1e-3, LengthUnit::millimetre)
      .value_or("refused");
}

std::string degrees_of(std::string_view old, double to_degrees) {
  return rewritten_number(*find_key("stair.hooks.wrap"), old, to_degrees * std::numbers::pi / 180.0,
                          LengthUnit::millimetre)
      .value_or("refused");
}

}  // namespace

TEST_CASE("rewrite: a bare number stays one, in the file's units", "[scene][edit]") {
  CHECK(millimetres("2350", 2681) == "2681");
  CHECK(millimetres("2350", 2681.5) == "2681.5");
  CHECK(millimetres("3.4", 4) == "4");
  CHECK(inches("39", 39.3125) == "39-5/16");
  CHECK(inches("39-1/4", 40) == "40");
  CHECK(inches("39 1/4", 39.5) == "39 1/2");
  CHECK(inches("39.25", 39.5) == "39.5");
  CHECK(inches("3/8", 0.4375) == "7/16");
}

TEST_CASE("rewrite: feet and inches stay feet and inches, in their own marks", "[scene][edit]") {
  CHECK(inches("9' 10-1/2\"", 118.6875) == "9' 10-11/16\"");
  CHECK(inches("9ft 4-3/16in", 112.25) == "9 ft 4-1/4 in");
  CHECK(inches("9 ft 2 in", 108) == "9 ft");
  CHECK(inches("12 ft", 144.0625) == "12 ft 1/16 in");
  CHECK(inches("9ft4in", 112.5) == "9ft4-1/2in");
  CHECK(inches("9' -4\"", 113) == "9' 5\"");
  CHECK(inches("25' 3\"", 302.9375) == "25' 2-15/16\"");
}

TEST_CASE("rewrite: a unit that stands there is kept, whatever the file's", "[scene][edit]") {
  CHECK(inches("2.5 m", 100 / 2.54) == "1 m");
  CHECK(inches("161.3 cm", 161.4 / 2.54) == "161.4 cm");
  CHECK(millimetres("3/8 in", 25.4) == "1 in");
  CHECK(millimetres("412mm", 413) == "413mm");
}

TEST_CASE("rewrite: angles keep their way of being written", "[scene][edit]") {
  CHECK(degrees_of("195", 172) == "172");
  CHECK(degrees_of("195 deg", 172.5) == "172.5 deg");
  CHECK(degrees_of("195\u00B0", 172) == "172\u00B0");
}

TEST_CASE("rewrite: what it cannot write is refused", "[scene][edit]") {
  CHECK(millimetres("banana", 10) == "refused");
  CHECK(millimetres("2350", -5) == "refused");     // outside the setting's range
  CHECK(millimetres("2350", 90000) == "refused");  // and again
  CHECK_FALSE(rewritten_number(*find_key("hoist.line.strength"), "8 kN", 9000, LengthUnit::millimetre));
  CHECK_FALSE(rewritten_number(*find_key("hoist.line.parts"), "4", 5, LengthUnit::millimetre));
}
