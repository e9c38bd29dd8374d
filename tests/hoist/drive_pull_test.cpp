#include "sim/hoist/drive_pull.h"

#include <catch2/catch.hpp>

#include "sim/trade/strength.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

Scene cranked(double ratio) {
  Scene scene = testing::sample_scene();
  scene.hoist->pulled_by = PulledBy::crank_winch;
  Winch winch;
  winch.drum = 0.060;
  winch.ratio = ratio;
  winch.crank = 0.250;
  winch.efficiency = 0.7;
  scene.hoist->winch = winch;
  return scene;
}

}  // namespace

// S-WINCH-line, derived: pull = F R i eta / (half the diameter at which the line runs).
TEST_CASE("drive pull: a crank pulls as its lever, gear and drum say, at the greatest listed force", "[hoist]") {
  const Scene scene = cranked(5.0);
  const double force = crank_figures(Person::strong).back().force;
  CHECK(*drive_pull(scene) == Approx(force * 0.250 * 5.0 * 0.7 / (0.5 * (0.060 + scene.hoist->line.diameter))));
}

TEST_CASE("drive pull: a clutch limits it, and a slower gear, a longer crank or a thinner drum raise it", "[hoist]") {
  Scene scene = cranked(5.0);
  const double before = *drive_pull(scene);
  CHECK(*drive_pull(cranked(10.0)) == Approx(2 * before));
  scene.hoist->winch->crank = 0.3;
  CHECK(*drive_pull(scene) > before);
  scene.hoist->overload = 400.0;
  CHECK(*drive_pull(scene) == 400.0);
}

TEST_CASE("drive pull: of a motor whose torque is not given nothing is known, but for its clutch", "[hoist]") {
  Scene scene = cranked(40.0);
  scene.hoist->pulled_by = PulledBy::powered_winch;
  CHECK_FALSE(drive_pull(scene));
  scene.hoist->overload = 900.0;
  CHECK(*drive_pull(scene) == 900.0);
  scene.hoist->overload.reset();
  scene.hoist->winch->torque = 10.0;
  CHECK(*drive_pull(scene) == Approx(10.0 * 40.0 * 0.7 / 0.034));
}

TEST_CASE("drive pull: a hand pulls what the strongest listed people do", "[hoist]") {
  CHECK(*drive_pull(testing::sample_scene()) == hand_pull_figures(Person::strong).back().force);
}
