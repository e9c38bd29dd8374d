#include "sim/trade/block.h"

#include <catch2/catch.hpp>
#include <numbers>
#include <stdexcept>

using namespace stowpath;

// Wire Rope Users Manual (S-TKL-geo, verified); the sling shop's (S-TKL-ratio) are fitted, derived.
TEST_CASE("block: two families of sheave factors are kept apart", "[trade][published]") {
  CHECK(sheave_factors().size() == 4);
  CHECK(handbook_sheave(false).K == 1.09);
  CHECK(handbook_sheave(true).K == 1.04);
  CHECK(handbook_sheave(true).source.id == "S-TKL-geo");
  CHECK(handbook_sheave(true).source.status == SourceStatus::verified);
  CHECK(sling_shop_sheave(false).K == 1.045);
  CHECK(sling_shop_sheave(true).K == 1.02);
  CHECK(sling_shop_sheave(true).source.id == "S-TKL-ratio");
  CHECK(sling_shop_sheave(true).source.status == SourceStatus::derived);
}

TEST_CASE("block: a sling needs an angle from the horizontal", "[trade]") {
  CHECK_THROWS_AS(sling_factor(0.0), std::invalid_argument);
  CHECK_THROWS_AS(sling_factor(-0.1), std::invalid_argument);
  CHECK_THROWS_AS(sling_factor(2.0), std::invalid_argument);
  CHECK(sling_factor(0.5 * std::numbers::pi) == Approx(1.0));
}
