#include "sim/hoist/worm.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

using namespace stowpath;

// With no pressure angle a worm is a square thread: tan(lambda) / tan(lambda + atan(mu)), novasolver.jp (verified).
TEST_CASE("worm: without a pressure angle it is a square thread", "[hoist][published]") {
  for (const double lead : {0.03, 0.09, 0.25}) {
    for (const double mu : {0.02, 0.1, 0.3}) {
      CHECK(worm_efficiency(lead, mu, 0.0) == Approx(std::tan(lead) / std::tan(lead + std::atan(mu))));
      CHECK(worm_holds(lead, mu, 0.0) == (lead <= std::atan(mu)));
    }
  }
}

TEST_CASE("worm: it holds exactly where the load's efficiency is not above 0", "[hoist]") {
  int holding = 0, draws = 0;
  for (double lead = 0.02; lead < 0.3; lead += 0.013) {
    for (double mu = 0.01; mu < 0.25; mu += 0.017) {
      ++draws;
      holding += worm_holds(lead, mu) ? 1 : 0;
      CHECK(worm_holds(lead, mu) == (worm_back_efficiency(lead, mu) <= 0.0));
      if (worm_holds(lead, mu)) CHECK(worm_efficiency(lead, mu) < 0.51);  // what holds by itself wastes half
    }
  }
  CHECK(holding > draws * 3 / 10);
  CHECK(holding < draws * 7 / 10);
}

TEST_CASE("worm: without friction nothing is lost and nothing holds", "[hoist]") {
  CHECK(worm_efficiency(0.1, 0.0) == 1.0);
  CHECK(worm_back_efficiency(0.1, 0.0) == 1.0);
  CHECK_FALSE(worm_holds(0.1, 0.0));
}

TEST_CASE("worm: sizes and friction that cannot be are refused", "[hoist]") {
  CHECK_THROWS_AS(worm_efficiency(0.0, 0.1), std::invalid_argument);
  CHECK_THROWS_AS(worm_efficiency(0.1, -0.1), std::invalid_argument);
  CHECK_THROWS_AS(worm_back_efficiency(1.6, 0.1), std::invalid_argument);
  CHECK_THROWS_AS(worm_geometry(0, 0.002, 0.03, 40), std::invalid_argument);
  CHECK_THROWS_AS(worm_geometry(1, 0.0, 0.03, 40), std::invalid_argument);
}
