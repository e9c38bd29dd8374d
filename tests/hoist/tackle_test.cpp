#include "sim/hoist/tackle.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

using namespace stowpath;

// Against the closed forms as printed, which the code sums instead; only rounding is allowed for.
TEST_CASE("tackle: the summed factors are the closed forms", "[hoist]") {
  for (const double K : {1.01, 1.04, 1.09, 1.3}) {
    for (int n = 1; n <= 12; ++n) {
      const double power = std::pow(K, n);
      CHECK(lead_line_factor(K, n) == Approx(power * (K - 1) / (power - 1)).epsilon(1e-10));
      CHECK(lowering_factor(K, n) == Approx((K - 1) / (K * (power - 1))).epsilon(1e-10));
    }
  }
}

TEST_CASE("tackle: without friction hauling, holding and lowering are one", "[hoist]") {
  for (int n = 1; n <= 8; ++n) {
    CHECK(lead_line_factor(1.0, n, 3) == Approx(1.0 / n));
    CHECK(lowering_factor(1.0, n, 3) == Approx(1.0 / n));
  }
}

TEST_CASE("tackle: a lead sheave costs its share both ways", "[hoist]") {
  CHECK(lead_line_factor(1.09, 3, 2) == Approx(1.09 * 1.09 * lead_line_factor(1.09, 3)));
  CHECK(lowering_factor(1.09, 3, 2) == Approx(lowering_factor(1.09, 3) / (1.09 * 1.09)));
}

TEST_CASE("tackle: in every model hauling is no easier than holding and lowering no harder", "[hoist]") {
  for (const SheaveKind kind : {SheaveKind::plain, SheaveKind::roller, SheaveKind::ball}) {
    for (int parts = 1; parts <= 10; ++parts) {
      const auto pulls = tackle_pulls(900.0, parts, 1, kind);
      CHECK(pulls.size() == (parts <= 8 ? 4 : 3));
      for (const TacklePull& pull : pulls) {
        INFO(pull.model << ", " << parts << " parts");
        CHECK(pull.raising >= pull.holding);
        if (pull.lowering) CHECK(*pull.lowering <= pull.holding);
        CHECK_FALSE(pull.source.id.empty());
      }
    }
  }
}

TEST_CASE("tackle: what is no tackle is refused", "[hoist]") {
  CHECK_THROWS_AS(additive_pull(1, 1, 0), std::invalid_argument);
  CHECK_THROWS_AS(lead_line_factor(0.9, 2), std::invalid_argument);
  CHECK_THROWS_AS(lead_line_factor(1.09, 0), std::invalid_argument);
  CHECK_THROWS_AS(lowering_factor(1.09, 2, -1), std::invalid_argument);
  CHECK_FALSE(sling_shop_ratio(true, 0));
  CHECK_FALSE(sling_shop_ratio(true, 9));
}
