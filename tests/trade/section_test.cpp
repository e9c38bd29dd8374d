#include "sim/trade/section.h"

#include <catch2/catch.hpp>
#include <limits>
#include <numbers>
#include <stdexcept>

using namespace stowpath;

// Closed forms: bh3/12, bh2/6, bh2/4 and, for a bar (a tube without a hole), pi d4/64 and d3/6. Only rounding is
// allowed for.
TEST_CASE("section: a rectangle and a bar have their closed forms", "[trade]") {
  const Section board = rectangle_section(2.0, 6.0);
  CHECK(board.area == Approx(12.0));
  CHECK(board.second_moment == Approx(36.0));
  CHECK(board.modulus == Approx(12.0));
  CHECK(board.plastic_modulus == Approx(18.0));
  const Section bar = tube_section(2.0, 1.0);
  CHECK(bar.area == Approx(std::numbers::pi));
  CHECK(bar.second_moment == Approx(std::numbers::pi / 4));
  CHECK(bar.plastic_modulus == Approx(8.0 / 6));
  CHECK(bar.gyration == Approx(0.5));
}

TEST_CASE("section: sides and walls that cannot be are refused", "[trade]") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(rectangle_section(0.0, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(rectangle_section(1.0, nan), std::invalid_argument);
  CHECK_THROWS_AS(tube_section(1.0, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(tube_section(1.0, 0.51), std::invalid_argument);
  CHECK_THROWS_AS(tube_section(nan, 0.1), std::invalid_argument);
}
