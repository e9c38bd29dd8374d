#include "sim/trade/figure.h"

#include <catch2/catch.hpp>
#include <limits>

using namespace stowpath;

TEST_CASE("figure: a number shows the decimals asked for, and no minus before zero", "[trade]") {
  CHECK(format_decimal(12.345, 1) == "12.3");
  CHECK(format_decimal(12.0, 2) == "12.00");
  CHECK(format_decimal(-0.04, 1) == "0.0");
  CHECK(format_decimal(-0.06, 1) == "-0.1");
  CHECK(format_decimal(1234567.0, 0) == "1234567");
}

TEST_CASE("figure: what has no end is called unbounded", "[trade]") {
  CHECK(format_decimal(std::numeric_limits<double>::infinity(), 1) == "unbounded");
  CHECK(format_decimal(std::numeric_limits<double>::quiet_NaN(), 1) == "unbounded");
  CHECK_THROWS_AS(format_decimal(1.0, 10), std::invalid_argument);
}
