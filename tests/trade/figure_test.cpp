#include "sim/trade/figure.h"

#include <catch2/catch.hpp>
#include <charconv>
#include <limits>
#include <random>
#include <type_traits>

using namespace stowpath;

TEST_CASE("figure: a number shows the decimals asked for, and no minus before zero", "[trade]") {
  CHECK(format_decimal(Nominal{12.345}, 1) == "12.3");
  CHECK(format_decimal(Nominal{12.0}, 2) == "12.00");
  CHECK(format_decimal(Nominal{-0.04}, 1) == "0.0");
  CHECK(format_decimal(Nominal{-0.06}, 1) == "-0.1");
  CHECK(format_decimal(Nominal{1234567.0}, 0) == "1234567");
}

TEST_CASE("figure: what has no end is called unbounded", "[trade]") {
  CHECK(format_decimal(Nominal{std::numeric_limits<double>::infinity()}, 1) == "unbounded");
  CHECK(format_decimal(Nominal{std::numeric_limits<double>::quiet_NaN()}, 1) == "unbounded");
  CHECK_THROWS_AS(format_decimal(Nominal{1.0}, 10), std::invalid_argument);
}

TEST_CASE("figure: what is at least so much is written down, what is at most so much up", "[trade]") {
  CHECK(format_decimal(AtLeast{12.39}, 1) == "12.3");
  CHECK(format_decimal(AtMost{12.31}, 1) == "12.4");
  CHECK(format_decimal(AtLeast{-16.2}, 0) == "-17");
  CHECK(format_decimal(AtMost{-16.8}, 0) == "-16");
  CHECK(format_decimal(-AtLeast{-16.2}, 0) == "17");
  CHECK(format_decimal(AtMost{-0.2}, 0) == "0");
  CHECK(format_decimal(Figure(AtMost{1231.0}).in(1000.0), 2) == "1.24");
}

TEST_CASE("figure: what is on a whole step but for rounding stays there", "[trade]") {
  CHECK(format_decimal(AtLeast{0.3 - 1e-16}, 1) == "0.3");
  CHECK(format_decimal(AtMost{0.1 + 0.2}, 1) == "0.3");
  CHECK(format_decimal(AtLeast{99.99999}, 0) == "99");
}

// The one way to write a number that says nothing of how it may be rounded is none at all.
TEST_CASE("figure: a bare number cannot be written", "[trade]") {
  static_assert(!std::is_convertible_v<double, Figure> && !std::is_constructible_v<Figure, double>);
  static_assert(!std::is_invocable_v<decltype(&format_decimal), double, int>);
  static_assert(std::is_invocable_v<decltype(&format_decimal), AtLeast, int>);
  static_assert(!std::is_convertible_v<AtLeast, AtMost> && !std::is_convertible_v<AtMost, AtLeast>);
  SUCCEED("checked while compiling");
}

TEST_CASE("figure: read back, a figure lies on its own side, less than a digit off", "[trade][random]") {
  std::mt19937 random(13);
  std::uniform_real_distribution<double> any(-1e4, 1e4), small(-2.0, 2.0);
  std::uniform_int_distribution<int> digits(0, 6);
  const auto read = [](const std::string& text) {
    double out = 0.0;
    std::from_chars(text.data(), text.data() + text.size(), out);
    return out;
  };
  for (int i = 0; i < 50'000; ++i) {
    const double value = i % 2 == 0 ? any(random) : small(random);
    const int decimals = digits(random);
    double step = 1.0;
    for (int k = 0; k < decimals; ++k) step /= 10.0;
    const double slack = 2e-6 * step + 1e-12;
    const double down = read(format_decimal(AtLeast{value}, decimals)),
                 up = read(format_decimal(AtMost{value}, decimals));
    REQUIRE(down <= value + slack);
    REQUIRE(down > value - step - slack);
    REQUIRE(up >= value - slack);
    REQUIRE(up < value + step + slack);
  }
}
