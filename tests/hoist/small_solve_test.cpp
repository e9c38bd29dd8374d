#include "sim/hoist/small_solve.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace stowpath;

TEST_CASE("small solve: a random system gives back the unknowns it was made from", "[hoist]") {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> draw(-1.0, 1.0);
  for (int n = 0; n < 200; ++n) {
    SmallSystem system(9);
    std::vector<double> made(9);
    for (double& x : made) x = draw(random);
    for (std::size_t i = 0; i < 9; ++i)
      for (std::size_t j = 0; j < 9; ++j) {
        system.at(i, j) = draw(random) + (i == (j + 4) % 9 ? 4.0 : 0.0);  // large off the diagonal: rows must swap
        system.b[i] += system.at(i, j) * made[j];
      }
    const auto found = solve_small(system);
    REQUIRE(found);
    for (std::size_t i = 0; i < 9; ++i) CHECK((*found)[i] == Approx(made[i]).margin(1e-12));  // rounding, well set
    CHECK(residual_of(system, *found) < 1e-13);
  }
}

TEST_CASE("small solve: equal rows have no one answer", "[hoist]") {
  SmallSystem system(2);
  system.a = {1.0, 2.0, 2.0, 4.0};
  CHECK_FALSE(solve_small(system));
}
