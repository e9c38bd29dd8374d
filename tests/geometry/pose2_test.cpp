#include "sim/geometry/pose2.h"

#include <catch2/catch.hpp>
#include <numbers>

#include "tests/support/random_outlines.h"

namespace stowpath {

TEST_CASE("pose: turns counter-clockwise first, then shifts", "[geometry]") {
  const Pose2 X_WB = make_pose({10, 20}, std::numbers::pi / 2);
  const Vec2 p = X_WB * Vec2{1, 0};
  CHECK(p.x == Approx(10).margin(1e-15));
  CHECK(p.y == Approx(21).margin(1e-14));
}

TEST_CASE("pose: composing and inverting agree with moving points one after the other", "[geometry]") {
  std::mt19937 random(1);
  double worst = 0.0;
  for (int i = 0; i < 10'000; ++i) {
    const auto number = [&] { return testing::uniform(random, -5, 5); };
    const Pose2 X_WA = make_pose({number(), number()}, number()), X_AB = make_pose({number(), number()}, number());
    const Vec2 p{number(), number()};
    worst = std::max({worst, norm((X_WA * X_AB) * p - X_WA * (X_AB * p)), norm(X_WA.inverse() * (X_WA * p) - p),
                      norm(X_WA.turn_back(X_WA.turn(p)) - p)});
  }
  CHECK(worst < 1e-13);  // a few roundings of coordinates to 20 m
}

}  // namespace stowpath
