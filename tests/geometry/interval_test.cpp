#include "sim/geometry/interval.h"

#include <catch2/catch.hpp>

#include "tests/support/random_outlines.h"

namespace stowpath {

TEST_CASE("interval: gap and overlap measure the two sides of touching", "[geometry]") {
  CHECK(gap({0, 1}, {3, 4}) == 2.0);
  CHECK(gap({3, 4}, {0, 1}) == 2.0);
  CHECK(gap({0, 1}, {1, 2}) == 0.0);
  CHECK(gap({0, 9}, {3, 4}) == 0.0);
  CHECK(overlap({0, 9}, {3, 4}) == 4.0);
  CHECK(overlap({0, 2}, {1, 9}) == 1.0);
  CHECK(overlap({0, 1}, {3, 4}) == -2.0);
  CHECK(hull({0, 1}, {3, 4}) == Interval{0, 4});
  CHECK(meet({0, 1}, {3, 4}).empty());
}

TEST_CASE("intervals: a union is sorted and joins what touches", "[geometry]") {
  CHECK(unite({{3, 4}, {0, 1}, {1, 2}, {9, 8}, {3.5, 5}}) == IntervalSet{{0, 2}, {3, 5}});
  CHECK(unite({}).empty());
  CHECK(unite({{2, 2}}) == IntervalSet{{2, 2}});
}

TEST_CASE("intervals: taking away leaves the pieces between", "[geometry]") {
  CHECK(subtract({0, 10}, {}) == IntervalSet{{0, 10}});
  CHECK(subtract({0, 10}, {{-1, 2}, {4, 5}, {9, 12}}) == IntervalSet{{2, 4}, {5, 9}});
  CHECK(subtract({0, 10}, {{-1, 12}}).empty());
  CHECK(subtract({0, 10}, {{-5, -1}, {11, 12}}) == IntervalSet{{0, 10}});
  CHECK(subtract({3, 3}, {{0, 2}}) == IntervalSet{{3, 3}});
  CHECK(subtract({3, 3}, {{0, 4}}).empty());
}

TEST_CASE("intervals: what is taken and what is left make up the whole", "[geometry]") {
  std::mt19937 random(1);
  for (int i = 0; i < 10'000; ++i) {
    IntervalSet some;
    for (int k = 0; k < 5; ++k) {
      const double lo = testing::uniform(random, 0, 10);
      some.push_back({lo, lo + testing::uniform(random, -1, 3)});
    }
    const IntervalSet taken = unite(some), left = subtract({0, 10}, taken);
    REQUIRE(total_length(left) + 10 - total_length(subtract({0, 10}, left)) ==
            Approx(2 * total_length(left)).margin(1e-12));  // sums of five lengths to 10
    const double x = testing::uniform(random, 0, 10);
    const bool in_some = std::any_of(some.begin(), some.end(), [x](Interval s) { return s.contains(x); });
    REQUIRE(contains(taken, x) == in_some);
    REQUIRE(contains(left, x) != in_some);  // a shared end would be met with probability 0
  }
}

}  // namespace stowpath
