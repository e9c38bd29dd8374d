#include "sim/hoist/winch.h"

#include <catch2/catch.hpp>
#include <numbers>

#include "sim/hoist/worm.h"

using namespace stowpath;

namespace {
constexpr double kInch = 0.0254;
constexpr double kPoundForce = 4.4482216152605;
constexpr double kDegree = std::numbers::pi / 180.0;

// Derived: a drum of 3 in, 20 : 1, 35 %, a crank of 8 in.
Winch hand_winch() {
  Winch winch;
  winch.drum = 3 * kInch;
  winch.ratio = 20;
  winch.crank = 8 * kInch;
  winch.efficiency = 0.35;
  return winch;
}
}  // namespace

// Derived by the formulas of the Mechanical Engineer's Data Handbook, p. 110 (forward, verified) and their reverse
// (derived); four decimals.
TEST_CASE("published winch: worms of three lead angles have their efficiencies", "[hoist][published]") {
  CHECK(kWormEfficiency.id == "S-WORM-eta");
  CHECK(kWormEfficiency.status == SourceStatus::verified);
  CHECK(kWormHolding.id == "S-WORM-back");
  CHECK(kWormHolding.status == SourceStatus::derived);
  CHECK(worm_efficiency(4 * kDegree, 0.10) == Approx(0.3936).margin(1e-4));
  CHECK(worm_back_efficiency(4 * kDegree, 0.10) == Approx(-0.518).margin(5e-4));  // three decimals
  CHECK(worm_holds(4 * kDegree, 0.10));
  CHECK(worm_holding_friction(4 * kDegree) == Approx(0.0657).margin(1e-4));
  CHECK(worm_efficiency(5 * kDegree, 0.05) == Approx(0.6189).margin(1e-4));
  CHECK(worm_back_efficiency(5 * kDegree, 0.05) == Approx(0.3900).margin(1e-4));
  CHECK_FALSE(worm_holds(5 * kDegree, 0.05));
  CHECK(worm_efficiency(14.04 * kDegree, 0.05) == Approx(0.8136).margin(1e-4));
  CHECK(worm_back_efficiency(14.04 * kDegree, 0.05) == Approx(0.7769).margin(1e-4));
}

// Mott, Machine Elements in Mechanical Design, 4th edition, p. 359 of the copy (verified): 3 starts, diametral pitch 6,
// worm of 2 in, gear of 52 teeth. Printed to 0.01 degrees and 0.001 in.
TEST_CASE("published winch: Mott's worm gear has its sizes", "[hoist][published]") {
  const WormGeometry worm = worm_geometry(3, kInch / 6, 2 * kInch, 52);
  CHECK(worm.axial_pitch / kInch == Approx(0.5236).margin(5e-5));
  CHECK(worm.lead / kInch == Approx(1.5708).margin(5e-5));
  CHECK(worm.lead_angle / kDegree == Approx(14.04).margin(0.01));
  CHECK(worm.gear_diameter / kInch == Approx(8.667).margin(5e-4));
  CHECK(worm.centre_distance / kInch == Approx(5.333).margin(5e-4));
  CHECK(worm.ratio == Approx(17.33).margin(0.005));
}

// Mott (verified): no more than about 5 degrees where a worm has to hold by itself. At 5 degrees it needs a friction of
// 0.082, derived: more than oiled gears may have, so the advice is no promise.
TEST_CASE("published winch: a worm at the advised lead still asks for friction", "[hoist][published]") {
  CHECK(kWormHoldingLeadSource.id == "S-WORM-5deg");
  CHECK(kWormHoldingLeadSource.status == SourceStatus::verified);
  CHECK(kWormHoldingLead / kDegree == Approx(5.0));
  CHECK(worm_holding_friction(kWormHoldingLead) == Approx(0.0822).margin(5e-5));
}

// Derived (S-WINCH-line): 200 lb on rope of 3/8 in: 6.027 lb at the handle in the first layer, 10.603 in/min at 20
// turns a minute, and 1.2222 times that in the second. Margins are half of the last digit.
TEST_CASE("published winch: the worked hand winch", "[hoist][published]") {
  Winch winch = hand_winch();
  const double rope = 0.375 * kInch, pull = 200 * kPoundForce;
  CHECK(drum_layer_diameter(winch.drum, rope, 1) / kInch == Approx(3.375));
  CHECK(drum_layer_diameter(winch.drum, rope, 2) / kInch == Approx(4.125));
  const WinchRun first = winch_run(winch, rope, 1.0, pull, 20);
  CHECK(*first.handle_force / kPoundForce == Approx(6.027).margin(5e-4));
  CHECK(*first.handle_force == Approx(26.8).margin(0.05));
  CHECK(first.line_speed / kInch == Approx(10.603).margin(5e-4));
  CHECK(line_speed(winch, rope, 2, 20) / first.line_speed == Approx(1.2222).margin(5e-5));
  winch.drum_length = 3 * kInch;  // eight turns a layer
  const WinchRun second = winch_run(winch, rope, 100 * kInch, pull, 20);
  CHECK(second.layers == 2);
  CHECK(*second.handle_force / *first.handle_force == Approx(1.2222).margin(5e-5));
}

// garlway.com (S-WINCH-supplier, verified, a secondary page): 50 N on 0.30 m of crank is 300 N on 0.05 m of drum, whole
// winches reach 60 to 80 %.
TEST_CASE("published winch: a supplier's check and the efficiency of geared hand winches", "[hoist][published]") {
  Winch winch;
  winch.drum = 0.0999;
  winch.crank = 0.30;
  winch.efficiency = 1.0;
  CHECK(*winch_run(winch, 0.0001, 1.0, 300, 30).handle_force == Approx(50));
  winch.efficiency.reset();
  CHECK(winch_efficiency(winch).share == 0.60);
  CHECK(winch_efficiency(winch).source.id == "S-WINCH-supplier");
}
