#include "sim/hoist/tackle.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "sim/trade/block.h"

using namespace stowpath;

// Nicholls's Seamanship and Nautical Knowledge (verified): a tenth of the load for each sheave, lead blocks included.
// The book rounds or leaves fractions, so the margin is half of the last digit that check values carry.
TEST_CASE("published tackle: Nicholls's six examples come out by the additive model", "[hoist][published]") {
  struct Example {
    std::string name;
    double load;
    int sheaves, parts;
    double pull;
  };
  const std::vector<Example> examples{{"gun tackle, 4 tons", 4, 2, 2, 2.4},
                                      {"three-fold at disadvantage, 12 tons", 12, 6, 6, 3.2},
                                      {"three-fold at advantage, 12 tons", 12, 6, 7, 2.743},
                                      {"double purchase at advantage, 20 cwt", 20, 4, 5, 5.6},
                                      {"treble at advantage, 40 tons", 40, 6, 7, 9.143},
                                      {"luff at disadvantage, 15 tons", 15, 3, 3, 6.5},
                                      {"three-fold at advantage with a lead block, 12 tons", 12, 7, 7, 2.914}};
  CHECK(kAdditiveTackle.id == "S-TKL-10pct");
  CHECK(kAdditiveTackle.status == SourceStatus::verified);
  for (const Example& example : examples) {
    INFO(example.name);
    CHECK(additive_pull(example.load, example.sheaves, example.parts) == Approx(example.pull).margin(0.001));
  }
}

// US Navy Builder 3 & 2 (verified): 600 lb on a single luff of advantage 3 is pulled by 200 lb without friction. With a
// tenth for each of its three sheaves: 260, derived.
TEST_CASE("published tackle: the Navy's luff needs 200 lb without friction and 260 with", "[hoist][published]") {
  CHECK(additive_pull(600, 0, 3) == Approx(200));
  CHECK(additive_pull(600, 3, 3) == Approx(260));
}

// US Navy 14043 (verified): a three-fold purchase on a line for 2 tons lifts 7-1/2.
TEST_CASE("published tackle: the Navy's three-fold lifts seven and a half tons", "[hoist][published]") {
  CHECK(kNavySafeLoad.id == "S-TKL-navy10");
  CHECK(kNavySafeLoad.status == SourceStatus::verified);
  CHECK(navy_safe_load(2, 6, 6) == Approx(7.5));
}

// Wire Rope Users Manual, 4th edition, p. 88 (verified): 6000 lb on four parts with two lead sheaves takes
// .309 x 1.09 x 1.09 = .367, hence 2202 lb; unrounded 2200.4.
TEST_CASE("published tackle: the handbook's four parts with two leads come out by the geometric model",
          "[hoist][published]") {
  CHECK(kGeometricTackle.id == "S-TKL-geo");
  CHECK(kGeometricTackle.status == SourceStatus::verified);
  const double K = handbook_sheave(false).K;
  CHECK(lead_line_factor(K, 4) == Approx(0.309).margin(0.0005));
  CHECK(lead_line_factor(K, 4, 2) * 6000 == Approx(2202).margin(3));
  CHECK(lead_line_factor(K, 4, 2) * 6000 == Approx(2200.4).margin(0.05));
}

// Derived from the closed form to four decimals. K 1.09 and 1.04 are the Wire Rope Users Manual's, verified.
TEST_CASE("published tackle: the grid of lead line factors", "[hoist][published]") {
  struct Row {
    double K;
    std::vector<double> factors;  // for 1, 2, ... parts
  };
  const std::vector<Row> rows{{1.09, {1.0900, 0.5685, 0.3951, 0.3087, 0.2571, 0.2229, 0.1987, 0.1807}},
                              {1.04, {1.0400, 0.5302, 0.3603, 0.2755, 0.2246, 0.1908, 0.1666, 0.1485}},
                              {1.05, {1.0500, 0.5378, 0.3672, 0.2820, 0.2310, 0.1970, 0.1728, 0.1547}},
                              {1.10, {1.1000, 0.5762, 0.4021, 0.3155, 0.2638, 0.2296, 0.2054, 0.1874}}};
  for (const Row& row : rows) {
    int parts = 0;
    for (const double factor : row.factors) {
      ++parts;
      INFO(row.K << ", " << parts << " parts");
      CHECK(lead_line_factor(row.K, parts) == Approx(factor).margin(5.1e-5));
    }
  }
}

// Pipeline Rules of Thumb Handbook (verified): four parts at E 0.917 give 3.25, so 3250 lb takes 1000 lb. The page
// rounds: 3.2361 and 1004.3, hence half a per cent.
TEST_CASE("published tackle: the same by a sheave's efficiency", "[hoist][published]") {
  CHECK(kEfficiencyTackle.id == "S-TKL-E");
  CHECK(kEfficiencyTackle.status == SourceStatus::verified);
  CHECK(advantage_by_efficiency(0.917, 4) == Approx(3.25).epsilon(0.005));
  CHECK(3250 / advantage_by_efficiency(0.917, 4) == Approx(1000).epsilon(0.005));
  CHECK(3250 / advantage_by_efficiency(0.917, 4) == Approx(1004.3).margin(0.05));
  CHECK(advantage_by_efficiency(1 / 1.09, 4) == Approx(1 / lead_line_factor(1.09, 4)));
}

// Rigger's Handbook (verified); that K = 1.045 and 1.02 fit it is derived. The table has two decimals.
TEST_CASE("published tackle: the sling shop's ratios are those of smaller sheave losses", "[hoist][published]") {
  CHECK(kSlingShopRatio.id == "S-TKL-ratio");
  CHECK(kSlingShopRatio.status == SourceStatus::verified);
  const std::vector<double> bronze{0.96, 1.87, 2.75, 3.59, 4.39, 5.16, 5.90, 6.60};
  const std::vector<double> rolling{0.98, 1.94, 2.88, 3.81, 4.71, 5.60, 6.47, 7.32};
  for (int parts = 1; parts <= 8; ++parts) {
    const auto i = static_cast<size_t>(parts) - 1;
    INFO(parts << " parts");
    CHECK(sling_shop_ratio(false, parts).value() == bronze[i]);
    CHECK(sling_shop_ratio(true, parts).value() == rolling[i]);
    CHECK(1 / lead_line_factor(sling_shop_sheave(false).K, parts) == Approx(bronze[i]).margin(0.0101));
    CHECK(1 / lead_line_factor(sling_shop_sheave(true).K, parts) == Approx(rolling[i]).margin(0.0101));
  }
  CHECK(sling_shop_sheave(false).source.status == SourceStatus::derived);
}

// certifiedslings.com (verified): 72,480 lb on an 8,000 lb line asks for a ratio of 9.06, beyond what eight parts give.
// The parts that first reach it are derived from the fits.
TEST_CASE("published tackle: a ratio of 9.06 asks for the next part up", "[hoist][published]") {
  const double ratio = 72480.0 / 8000.0;
  CHECK(ratio == Approx(9.06));
  CHECK(sling_shop_ratio(true, 8).value() < ratio);
  CHECK(1 / lead_line_factor(1.045, 11) < ratio);
  CHECK(1 / lead_line_factor(1.045, 12) > ratio);
  CHECK(1 / lead_line_factor(1.02, 10) < ratio);
  CHECK(1 / lead_line_factor(1.02, 11) > ratio);
}

// Derived from the closed form.
TEST_CASE("published tackle: 1000 lb on four plain parts is raised by 309 lb and lowered by 201",
          "[hoist][published]") {
  CHECK(kLoweringTackle.status == SourceStatus::derived);
  CHECK(1000 * lead_line_factor(1.09, 4) == Approx(308.67).margin(0.005));
  CHECK(1000 * lead_line_factor(1.0, 4) == Approx(250));
  CHECK(1000 * lowering_factor(1.09, 4) == Approx(200.61).margin(0.005));
}

// The models disagree: S-TKL-ideal (derived), S-TKL-ratio, S-TKL-geo and S-TKL-10pct (verified each), four parts.
TEST_CASE("published tackle: four models give four pulls, each under its own name", "[hoist][published]") {
  const auto pulls = tackle_pulls(1.0, 4, 0, SheaveKind::plain);
  REQUIRE(pulls.size() == 4);
  const std::vector<std::string> names{"ideal", "sling shop", "geometric", "additive"};
  const std::vector<std::string> ids{"S-TKL-ideal", "S-TKL-ratio", "S-TKL-geo", "S-TKL-10pct"};
  const std::vector<double> shares{0.25, 0.279, 0.309, 0.35};  // three decimals
  for (size_t i = 0; i < pulls.size(); ++i) {
    CHECK(std::string(pulls[i].model) == names[i]);
    CHECK(std::string(pulls[i].source.id) == ids[i]);
    CHECK(pulls[i].raising == Approx(shares[i]).margin(0.0005));
  }
}
