#include "sim/hoist/capstan.h"

#include <catch2/catch.hpp>
#include <stdexcept>

using namespace stowpath;

TEST_CASE("capstan: wraps multiply", "[hoist]") {
  CHECK(capstan_ratio(0.2, 3.0) == Approx(capstan_ratio(0.2, 1.0) * capstan_ratio(0.2, 2.0)));
  CHECK(capstan_ratio(0.2, 0.0) == 1.0);
  CHECK(capstan_ratio(0.0, 9.0) == 1.0);
  CHECK(capstan_hold(500.0, 0.3, 2.0) * capstan_ratio(0.3, 2.0) == Approx(500.0));
}

TEST_CASE("capstan: friction and wrap below 0 are refused", "[hoist]") {
  CHECK_THROWS_AS(capstan_ratio(-0.1, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(capstan_hold(1.0, 0.1, -1.0), std::invalid_argument);
}
