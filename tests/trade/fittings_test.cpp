#include "sim/trade/fittings.h"

#include <catch2/catch.hpp>
#include <numbers>

using namespace stowpath;

namespace {
constexpr double kDegree = std::numbers::pi / 180.0;
}

// kingwingmetal.com (S-EYE-angle, verified on a secondary page; the standard was not read).
TEST_CASE("fittings: a shoulder eyebolt keeps the printed share of the next angle up", "[trade][published]") {
  CHECK(shoulder_eyebolt_shares()[1].source.id == "S-EYE-angle");
  CHECK(shoulder_eyebolt_shares()[1].source.status == SourceStatus::verified);
  CHECK(eyebolt_share(true, 0.0).value() == 1.0);
  CHECK(eyebolt_share(true, 15 * kDegree).value() == 0.80);
  CHECK(eyebolt_share(true, 30 * kDegree).value() == 0.65);
  CHECK(eyebolt_share(true, 45 * kDegree).value() == 0.30);
  CHECK(eyebolt_share(true, 90 * kDegree).value() == 0.25);
  CHECK(eyebolt_share(true, 31 * kDegree).value() == 0.30);
  CHECK(eyebolt_share(true, -31 * kDegree).value() == 0.30);
  CHECK_FALSE(eyebolt_share(true, 91 * kDegree));
}

// loonikconnect.com (S-EYE-plain, verified on a secondary page): in line only. That 5 degrees are in line is ours.
TEST_CASE("fittings: a plain eyebolt has no share off its axis", "[trade][published]") {
  CHECK(eyebolt_share(false, 4 * kDegree).value() == 1.0);
  CHECK_FALSE(eyebolt_share(false, 6 * kDegree));
  CHECK_FALSE(eyebolt_share(false, 45 * kDegree));
}

// riggingresource.com on ASME B30.26 (S-B30-26, verified on a secondary page); blocks from memory.
TEST_CASE("fittings: design factors are the rigging standard's", "[trade][published]") {
  REQUIRE(fitting_design_factors().size() == 5);
  CHECK(fitting_design_factors()[0].factor == 5.0);
  CHECK(fitting_design_factors()[1].factor == 4.0);
  CHECK(fitting_design_factors()[2].factor == 5.0);
  CHECK(fitting_design_factors()[2].source.status == SourceStatus::verified);
  CHECK(fitting_design_factors()[4].factor == 4.0);
  CHECK(fitting_design_factors()[4].source.status == SourceStatus::memory);
}

// S-CARA: 20 kN (4,496 lbf) and 22.2 kN verified on secondary pages, EN 12275 from memory.
TEST_CASE("fittings: a carabiner's notes carry their strengths and an accessory clip none", "[trade][published]") {
  REQUIRE(carabiner_notes().size() == 4);
  CHECK(carabiner_notes()[0].strength / 4.4482216152605 == Approx(4496).margin(0.5));
  CHECK(carabiner_notes()[1].strength == Approx(22.2e3).margin(50));
  CHECK(carabiner_notes()[2].source.status == SourceStatus::memory);
  CHECK(carabiner_notes()[3].strength == 0.0);
}
