#include "sim/hoist/effort.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/support/sample_scene.h"

using namespace stowpath;
using stowpath::testing::sample_scene;

namespace {

// A lift whose pull peaks at `peak`, with `haul` of line taken in.
PullReport report_of(double peak, double haul) {
  PullReport report;
  PullSample sample;
  sample.solvable = sample.lets_down = true;
  sample.hand_raising = peak;
  sample.hand_lowering = 0.5 * peak;
  report.samples = {sample};
  report.peak_raising = 0;
  report.haul_length = haul;
  return report;
}

Scene cranked(std::optional<double> worm_lead = std::nullopt) {
  Scene scene = sample_scene();
  Winch winch;
  winch.drum = 0.060;
  winch.ratio = 5.0;
  winch.crank = 0.250;
  winch.worm_lead = worm_lead;
  scene.hoist->pulled_by = PulledBy::crank_winch;
  scene.hoist->winch = winch;
  return scene;
}

}  // namespace

TEST_CASE("effort: a pull under every figure is within, and one over a figure is not", "[hoist]") {
  const Scene scene = sample_scene();
  const HoistEffort easy = reckon_effort(scene, report_of(50.0, 6.0));
  CHECK(easy.verdict == EffortVerdict::within);
  CHECK(easy.exceeded == 0);
  CHECK(easy.worst_excess == Approx(50.0 - easy.limits.front().limit.force));
  const HoistEffort hard = reckon_effort(scene, report_of(2000.0, 6.0));
  CHECK(hard.verdict == EffortVerdict::over);
  CHECK(hard.exceeded == static_cast<int>(hard.limits.size()));
}

TEST_CASE("effort: the user's own limit decides alone where there is one", "[hoist]") {
  Scene scene = sample_scene();
  scene.hoist->hand_limit = 300.0;
  const HoistEffort within = reckon_effort(scene, report_of(250.0, 6.0));
  CHECK(within.verdict == EffortVerdict::within);
  CHECK(within.worst_excess == Approx(-50.0));
  CHECK(reckon_effort(scene, report_of(310.0, 6.0)).exceeded == 1);
}

TEST_CASE("effort: between the weak and the strong, only the strong can", "[hoist]") {
  const Scene scene = sample_scene();
  CHECK(who_can(reckon_effort(scene, report_of(50.0, 6.0))).weak);
  const WhoCan middling = who_can(reckon_effort(scene, report_of(200.0, 6.0)));
  CHECK_FALSE(middling.weak);
  CHECK(middling.strong);
  CHECK_FALSE(who_can(reckon_effort(scene, report_of(2000.0, 6.0))).strong);
}

TEST_CASE("effort: a crank is slow where a drill is quick, in the ratio of their turns", "[hoist]") {
  const HoistEffort effort = reckon_effort(cranked(), report_of(400.0, 6.0));
  REQUIRE(effort.winch);
  REQUIRE(effort.drill);
  CHECK(effort.input_speed == kUsualCrankingRate);
  CHECK(effort.winch->turns == Approx(effort.drill->turns));
  CHECK(effort.winch->minutes / effort.drill->minutes == Approx(kDrillSpeed / kUsualCrankingRate));
}

TEST_CASE("effort: a drive is judged by the torque it is said to give", "[hoist]") {
  Scene scene = cranked();
  scene.hoist->pulled_by = PulledBy::powered_winch;
  CHECK(reckon_effort(scene, report_of(400.0, 6.0)).verdict == EffortVerdict::unknown);
  scene.hoist->winch->torque = 100.0;
  CHECK(reckon_effort(scene, report_of(400.0, 6.0)).verdict == EffortVerdict::within);
  scene.hoist->winch->torque = 0.1;
  CHECK(reckon_effort(scene, report_of(400.0, 6.0)).verdict == EffortVerdict::over);
}

TEST_CASE("effort: where hauling cannot lift, no strength helps", "[hoist]") {
  PullReport report = report_of(10.0, 6.0);
  report.events.push_back({PullEventKind::cannot_lift, 0, 0.5, {}});
  CHECK(reckon_effort(sample_scene(), report).verdict == EffortVerdict::cannot);
}

TEST_CASE("effort: what holds when the hand lets go is a cleat, a worm, friction or nothing", "[hoist]") {
  const PullReport report = report_of(100.0, 6.0);
  const auto holding = [&](const Scene& scene) { return what_holds(scene, report, reckon_effort(scene, report)).by; };
  Scene scene = sample_scene();
  CHECK(holding(scene) == LetGo::nothing);
  scene.hoist->cleat = true;
  CHECK(holding(scene) == LetGo::cleat);
  CHECK(holding(cranked()) == LetGo::nothing);
  CHECK(holding(cranked(0.05)) == LetGo::winch);  // 2.9 degrees of lead hold at the usual friction of 0.1
  PullReport stuck = report;
  stuck.samples[0].hand_lowering = -1.0;
  scene.hoist->cleat = false;
  CHECK(what_holds(scene, stuck, reckon_effort(scene, stuck)).by == LetGo::friction);
}
