#include "sim/rehearsal/elastic_line.h"

#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "sim/hoist/capstan.h"
#include "sim/trade/us_units.h"
#include "tests/support/hinged_rods.h"

namespace stowpath {
namespace {

constexpr double kLength = 2.4384, kMass = 20.0, kPick = 2.0;  // [m, kg, m]

// A rod held level by a line that runs straight up from the pick over one sheave and down to a hand.
ElasticLine line_over_a_sheave(double K) {
  ElasticLine line;
  line.rigging.points = {{0, {kPick, 0.0}, 0.0, false, false, "pick"},
                         {-1, {kPick, 3.0}, 0.0, false, true, "sheave"},
                         {-1, {kPick + 0.5, -1.0}, 0.0, false, false, "hand"}};
  line.rigging.parts = 1;
  line.rigging.K = K;
  line.rigging.diameter = 0.008;
  line.stiffness = 56e3;
  return line;
}

struct Trial {
  double mass = kMass;  // [kg]
  double K = 1.09;
  double rate = 960.0;  // steps a second
};

// Lets the rod come to rest on the line, or be hauled at a speed, and returns the last pull.
LinePull pull_after(double seconds, double paying, double slack, const Trial& trial = {}) {
  const Model rod = testing::hinged_rods(1, kLength, trial.mass);
  SideWorld world(rod, testing::bare_setup(rod, 1.0 / trial.rate), {0.0, 0.5 * std::numbers::pi, {}});
  const ElasticLine line = line_over_a_sheave(trial.K);
  LineFeed feed{line_pull(line, {}, world, 0.0).length + slack, paying};
  LinePull pull;
  for (int i = 0; i < static_cast<int>(seconds * trial.rate); ++i) {
    feed.paid += paying / trial.rate;
    pull = line_pull(line, feed, world, 0.0);
    for (const SectionLoad& load : pull.loads) world.push(load.section, load.at, load.force);
    world.step();
  }
  return pull;
}

// Moments about the pivot: the part at the pick bears m g (L/2) / pick; both levers shrink alike as the rope stretches.
const double kHeld = kMass * kGravity * 0.5 * kLength / kPick;

TEST_CASE("elastic line: held, it pulls what statics says without friction", "[rehearsal]") {
  CHECK(pull_after(6.0, 0.0, 0.0).hand == Approx(kHeld).epsilon(2e-3));
}

TEST_CASE("elastic line: hauled or paid out, the hand feels the sheave's friction", "[rehearsal]") {
  CHECK(pull_after(4.0, -0.03, 0.0).hand == Approx(1.09 * kHeld).epsilon(5e-3));
  CHECK(pull_after(4.0, 0.03, 0.0).hand == Approx(kHeld / 1.09).epsilon(5e-3));
}

// W23: 100 kg over a fixed post, three quarters of a turn at 0.2: 382.13 N hold them, as they are let down (verified;
// with 9.80665).
TEST_CASE("elastic line: let down over a post, it is held as the capstan rule says, whatever the step",
          "[rehearsal][published]") {
  const double K = capstan_ratio(0.2, 1.5 * std::numbers::pi);
  for (const double rate : {480.0, 960.0, 1920.0}) {
    const Trial post{100.0 * kPick / (0.5 * kLength), K, rate};
    CHECK(pull_after(3.0, 0.02, 0.0, post).hand == Approx(382.13).epsilon(2e-4));
  }
}

TEST_CASE("elastic line: slack, it pulls nothing", "[rehearsal]") {
  const LinePull slack = pull_after(0.05, 0.0, 0.5);
  CHECK(slack.hand == 0.0);
  CHECK(slack.loads.empty());
  CHECK(slack.stretch < -0.4);
}

// k w: one body free of its pin, m and m L^2/12 about its centre, pulled at 0.78 m from it.
TEST_CASE("elastic line: it bounces no swifter than its stiffness on the mass that it holds", "[rehearsal]") {
  const double arm = kPick - 0.5 * kLength, inverse = 1.0 / kMass + arm * arm * 12.0 / (kMass * kLength * kLength);
  const LinePull pull = pull_after(0.01, 0.0, 0.0);
  CHECK(pull.swiftness == Approx(std::sqrt(pull.stiffness * inverse)).epsilon(1e-3));
}

}  // namespace
}  // namespace stowpath
