#include "sim/loads/hoist_loads.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "sim/loads/loads.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

PullReport pulled(const Scene& scene, const Model& model) {
  PullOptions options;
  options.changes = false;
  options.step = 0.02;  // a degree: these checks look at the samples there are
  return pull_through(scene, model, options);
}

}  // namespace

TEST_CASE("hoist loads: the hand's greatest tension is the report's peak, and no segment passes the line's",
          "[loads]") {
  const Scene scene = testing::one_section_scene();
  const Model model = build_model(scene);
  const PullReport report = pulled(scene, model);
  const HoistLoads loads = hoist_loads(model, report);
  REQUIRE(report.peak_raising);
  CHECK(loads.hand.force == Approx(report.samples[*report.peak_raising].hand_raising));
  CHECK(loads.line.force >= loads.hand.force);
  CHECK(loads.line.force >= loads.dead_end.force);
  CHECK_FALSE(loads.hand.where.empty());
}

// Four parts of equal tension T without friction: at most 4 T at the pick; at the ceiling point five segments meet.
TEST_CASE("hoist loads: without friction pick and ceiling point get as many tensions as segments meet there",
          "[loads]") {
  Scene scene = testing::one_section_scene();
  scene.hoist->line.friction = SheaveFriction::ideal;
  const Model model = build_model(scene);
  const HoistLoads loads = hoist_loads(model, pulled(scene, model));
  CHECK(loads.pick.force == Approx(4 * loads.hand.force).epsilon(1e-9));  // its segments run side by side
  const double ceiling = std::hypot(norm(loads.ceiling), loads.ceiling_along);
  CHECK(ceiling > 3 * loads.hand.force);
  CHECK(ceiling < 5 * loads.hand.force);
}

TEST_CASE("hoist loads: the forces on the stair balance its weight where they are greatest", "[loads]") {
  const Scene scene = testing::one_section_scene();
  const Model model = build_model(scene);
  const HoistLoads loads = hoist_loads(model, pulled(scene, model));
  const double weight = model.masses[0].mass * 9.80665;
  CHECK(norm(loads.hooks) < weight);  // the line takes the rest
  CHECK(norm(loads.hooks) > 0.1 * weight);
  CHECK(loads.joint_moment == 0.0);
}

TEST_CASE("hoist loads: a folding stair's lift loads its hinge and fold line, and they reach the hardware list",
          "[loads]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  const HoistLoads loads = hoist_loads(model, pulled(scene, model));
  CHECK(loads.hinge.force > 0.0);
  const LoadsReport report = look_at_loads(scene, model, loads);
  CHECK(report.rails.size() == 4);  // a person's three ways, and the hoist
  bool line = false;
  for (const HardwareItem& item : report.hardware) line = line || item.name == "hoist line";
  CHECK(line);
}
