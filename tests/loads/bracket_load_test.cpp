#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "sim/loads/rail.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

constexpr double kProjection = 0.075, kDrop = 0.055, kHeight = 0.090;  // of the sample's bracket

Scene screwed(int count) {
  Scene scene = testing::sample_scene();
  scene.rail.brackets.screws = Screws{count, 0.008, 0.050, true, "SPF"};
  return scene;
}

// A case whose one bracket gets just this force of the pipe, out and up.
BracketLoad under(const Scene& scene, Vec2 force) {
  RailCase rail;
  rail.forces.total = force;
  rail.peaks.press = {{norm(force), 1.0, 1.0}};
  rail.peaks.hold = {{0.0, 1.0, 1.0}};
  return bracket_loads(scene, rail).front();
}

RailCase hung(const Scene& scene, Vec2 total) {
  return rail_under(scene, {"a test", total, {0.5, 0.5}, {0.55, 7.0}}, 5);
}

}  // namespace

TEST_CASE("brackets: every one is given, pressed and held down, and the worst is one of them", "[loads]") {
  const Scene scene = screwed(4);
  const RailCase rail = hung(scene, {0.0, -1500.0});
  const auto loads = bracket_loads(scene, rail);
  const auto& stations = scene.rail.brackets.stations;
  REQUIRE(loads.size() == 2 * stations.size());
  double most = 0.0, uplift = 0.0;
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const BracketLoad &pressed = loads[2 * i], &held = loads[2 * i + 1];
    CHECK((pressed.state == BracketState::pressed && held.state == BracketState::held_down));
    CHECK((pressed.station == stations[i] && held.station == stations[i]));
    CHECK(pressed.force.y == Approx(-rail.peaks.press[i].value));
    CHECK(held.force.y == Approx(rail.peaks.hold[i].value).margin(1e-12));
    most = std::max(most, -pressed.force.y);
    uplift = std::max(uplift, held.force.y);
    CHECK_FALSE(pressed.lower);
    CHECK(held.lower == (held.force.y > 0.0));
  }
  CHECK(uplift > 0.0);
  const BracketLoad worst = worst_bracket(scene, rail);
  CHECK(-worst.force.y == most);
  CHECK(worst.uplift == uplift);
}

TEST_CASE("brackets: a pipe that lifts pulls the lower screws, about the plate's upper edge", "[loads]") {
  const BracketLoad up = under(screwed(4), {0.0, 200.0}), down = under(screwed(4), {0.0, -200.0});
  CHECK(up.lower);
  CHECK_FALSE(down.lower);
  CHECK(up.pull == Approx(200.0 * kProjection / (0.75 * kHeight) / 2));
  CHECK(up.pull == Approx(down.pull));
  CHECK(up.shear == Approx(50.0));
  CHECK(up.bending == Approx(200.0 * 0.069));
}

// By hand: a pull outward at the pipe, over the arm by its drop, opens the plate's top as a weight does; one towards
// the wall presses it shut.
TEST_CASE("brackets: a force outward adds to a weight's pull and bending, one to the wall takes from them", "[loads]") {
  const Scene scene = screwed(4);
  const double weight = under(scene, {0.0, -300.0}).pull, bent = under(scene, {0.0, -300.0}).bending;
  const BracketLoad out = under(scene, {100.0, -300.0}), in = under(scene, {-100.0, -300.0});
  CHECK(out.pull == Approx(weight + 100.0 * (kDrop + 0.5 * kHeight) / (0.75 * kHeight) / 2));
  CHECK(in.pull == Approx(std::max(0.0, weight - 100.0 * (kDrop + 0.5 * kHeight) / (0.75 * kHeight) / 2)));
  CHECK(out.bending == Approx(bent + 100.0 * kDrop));
  CHECK(in.bending == Approx(bent - 100.0 * kDrop));
}

TEST_CASE("brackets: forces and moments on the plate balance", "[loads]") {
  std::mt19937 random(43);
  std::uniform_real_distribution<double> force(-1000.0, 1000.0), drop(-0.02, 0.08);
  int upper = 0, lower = 0;
  for (int draw = 0; draw < 300; ++draw) {
    Scene scene = screwed(2);
    scene.rail.brackets.drop = drop(random);
    const Vec2 on{force(random), force(random)};
    const BracketLoad load = under(scene, on);
    // Moments about the edge that the pulled half turns away from: that half alone, or with the other half's help.
    const double opening = -on.y * kProjection + on.x * scene.rail.brackets.drop;
    const double turning = std::abs(opening) + 0.5 * kHeight * on.x;
    CHECK(load.pull * 0.75 * kHeight <= std::max(0.0, turning) + 1e-9);
    CHECK(load.pull * 0.75 * kHeight + std::max(0.0, on.x - load.pull) * 0.25 * kHeight >= turning - 1e-9);
    CHECK(load.pull >= 0.5 * std::max(0.0, on.x) - 1e-9);  // two screws hold the whole pull between them
    if (load.pull > 0.0) (load.lower ? lower : upper) += 1;
  }
  CHECK(upper > 90);  // both ways were drawn
  CHECK(lower > 90);
}

TEST_CASE("brackets: a single screw in the plate's middle holds with half the height", "[loads]") {
  CHECK(under(screwed(1), {0.0, -300.0}).pull == Approx(300.0 * kProjection / (0.5 * kHeight)));
  CHECK(under(screwed(1), {0.0, 300.0}).pull == Approx(300.0 * kProjection / (0.5 * kHeight)));
}

TEST_CASE("brackets: where the rail pulls outward, a held bracket is pushed to the wall", "[loads]") {
  const Scene scene = screwed(4);
  const RailCase rail = hung(scene, {900.0, -1200.0});
  for (const BracketLoad& load : bracket_loads(scene, rail)) {
    const double size = norm(load.force);
    if (!(size > 0.0)) continue;
    const double way = load.state == BracketState::pressed ? 1.0 : -1.0;
    CHECK(load.force.x == Approx(way * 0.6 * size));
    CHECK(load.force.y == Approx(way * -0.8 * size));
  }
}
