#include "sim/trade/friction.h"

#include <catch2/catch.hpp>
#include <numbers>
#include <string>

#include "sim/hoist/capstan.h"
#include "sim/hoist/jam.h"

using namespace stowpath;

namespace {
constexpr double kInch = 0.0254;

// Pounds that keep 200 lb rolling on a wheel of 1.5 in radius.
double worked_wheel(const std::string& name) {
  for (const RollingPair& pair : rolling_pairs()) {
    if (pair.name == name) return rolling_force(200, 1.5 * kInch, pair.arm.lo);
  }
  return -1.0;
}
}  // namespace

// Arms: emachineshop.com (S-ROLL-1) and nordengineeringdatabase.com (S-ROLL-2), verified; the forces are derived.
TEST_CASE("published friction: 200 lb roll on a wheel of 3 in", "[trade][published]") {
  CHECK(worked_wheel("steel on steel") == Approx(2.667).margin(1e-3));
  CHECK(worked_wheel("wood on steel") == Approx(6.667).margin(1e-3));
  CHECK(worked_wheel("polymer on steel") == Approx(10.667).margin(1e-3));
  CHECK(worked_wheel("iron on wood") == Approx(29.333).margin(1e-3));
}

// pickedshares.com, exercise 27 (S-CAP, verified): 100 kg, friction 0.2, three quarters of a turn twice over; with
// g = 9.81 it holds with 382.26 N, with 9.80665 382.13 (derived).
TEST_CASE("published friction: the worked capstan holds with 382 N", "[hoist][published]") {
  CHECK(kCapstan.id == "S-CAP");
  CHECK(kCapstan.status == SourceStatus::verified);
  CHECK(capstan_hold(100 * 9.81, 0.2, 1.5 * std::numbers::pi) == Approx(382.26).margin(0.01));
  CHECK(capstan_hold(100 * 9.80665, 0.2, 1.5 * std::numbers::pi) == Approx(382.13).margin(0.01));
}

// openknowledgegraph.com, belt and rope friction (verified): 2000 N, 0.25, two and a half turns: 39.4 N. The ratios are
// derived.
TEST_CASE("published friction: turns round a post", "[hoist][published]") {
  CHECK(capstan_hold(2000, 0.25, 5 * std::numbers::pi) == Approx(39.4).margin(0.05));
  CHECK(capstan_ratio(0.3, 2 * std::numbers::pi) == Approx(6.586).margin(5e-4));
  CHECK(capstan_ratio(0.3, std::numbers::pi) == Approx(2.566).margin(5e-4));
}

// S-JAM-rule, derived. A slider of 1 in with friction 0.1 jams from 5 in (chegg.com q3459574, verified). A bracket with
// contacts 6 in apart and friction 0.25 from 12 in (statement verified; Beer & Johnston's numbers from memory). One of
// 8 in and 0.6 from 6.667 in (statement askfilo.com, verified; answer derived).
TEST_CASE("published friction: sliders and brackets jam from their offsets on", "[hoist][published]") {
  CHECK(kJamRule.id == "S-JAM-rule");
  CHECK(kJamRule.status == SourceStatus::derived);
  CHECK(jam_offset(1, 0.1) == Approx(5).margin(1e-6));
  CHECK(jam_offset(6, 0.25) == Approx(12).margin(1e-6));
  CHECK(jam_offset(8, 0.6) == Approx(6.667).margin(5e-4));
}
