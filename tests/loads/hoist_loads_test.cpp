#include "sim/loads/hoist_loads.h"

#include <catch2/catch.hpp>
#include <algorithm>
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

template <class Value>
double most(const HoistLoads& loads, HoistDoing doing, Value value) {
  double out = 0.0;
  for (const HoistState& state : loads.states)
    if (state.doing == doing) out = std::max(out, value(state));
  return out;
}

double size_of(const Vec3& force) { return std::hypot(norm(force.side), force.along_rail); }

}  // namespace

TEST_CASE("hoist loads: the hand's greatest tension is the report's peak, and no segment passes the line's",
          "[loads]") {
  const Scene scene = testing::one_section_scene();
  const Model model = build_model(scene);
  const PullReport report = pulled(scene, model);
  const HoistLoads loads = hoist_loads(scene, model, report);
  REQUIRE(report.peak_raising);
  const double hand = most(loads, HoistDoing::raising, [](const HoistState& s) { return s.hand; });
  CHECK(hand == Approx(report.samples[*report.peak_raising].hand_raising));
  for (const HoistState& state : loads.states) {
    CHECK(state.line >= state.hand);
    CHECK(state.line >= state.dead_end);
    CHECK_FALSE(state.where.empty());
  }
}

// Four parts of equal tension T without friction: at most 4 T at the pick; at the ceiling point five segments meet.
TEST_CASE("hoist loads: without friction pick and ceiling point get as many tensions as segments meet there",
          "[loads]") {
  Scene scene = testing::one_section_scene();
  scene.hoist->line.friction = SheaveFriction::ideal;
  const Model model = build_model(scene);
  for (const HoistState& state : hoist_loads(scene, model, pulled(scene, model)).states) {
    CHECK(size_of(state.pick) == Approx(4 * state.hand).epsilon(1e-9));  // its segments run side by side
    CHECK(size_of(state.ceiling) > 3 * state.hand);
    CHECK(size_of(state.ceiling) < 5 * state.hand);
  }
}

TEST_CASE("hoist loads: the forces on the stair balance its weight where they are greatest", "[loads]") {
  const Scene scene = testing::one_section_scene();
  const Model model = build_model(scene);
  const HoistLoads loads = hoist_loads(scene, model, pulled(scene, model));
  const double weight = model.masses[0].mass * 9.80665;
  const double hooks = most(loads, HoistDoing::raising, [](const HoistState& s) { return norm(s.hooks); });
  CHECK(hooks < weight);  // the line takes the rest
  CHECK(hooks > 0.1 * weight);
  for (const HoistState& state : loads.states) CHECK(state.moments.empty());
}

TEST_CASE("hoist loads: a folding stair's lift loads its hinge and fold line, and they reach the hardware list",
          "[loads]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  const HoistLoads loads = hoist_loads(scene, model, pulled(scene, model));
  CHECK(most(loads, HoistDoing::raising, [](const HoistState& s) { return s.hinges.at(0); }) > 0.0);
  const LoadsReport report = look_at_loads(scene, model, loads);
  bool line = false;
  for (const HardwareItem& item : report.hardware) line = line || item.name == "hoist line";
  CHECK(line);
}

TEST_CASE("hoist loads: a stair that catches gets the drive's whole pull at every pose, without friction", "[loads]") {
  Scene scene = testing::one_section_scene();
  scene.hoist->overload = 300.0;
  const Model model = build_model(scene);
  const HoistLoads loads = hoist_loads(scene, model, pulled(scene, model));
  REQUIRE(loads.drive);
  CHECK(*loads.drive == 300.0);
  CHECK(most(loads, HoistDoing::snagged, [](const HoistState& s) { return s.hand; }) == Approx(300.0));
  CHECK(most(loads, HoistDoing::snagged, [](const HoistState& s) { return size_of(s.pick); }) == Approx(1200.0));
}

TEST_CASE("hoist loads: a parked stair hangs on its line without the jerks of a moving one", "[loads]") {
  const Scene scene = testing::one_section_scene();
  const Model model = build_model(scene);
  const HoistLoads loads = hoist_loads(scene, model, pulled(scene, model));
  const double parked = most(loads, HoistDoing::parked, [](const HoistState& s) { return s.line; });
  CHECK(parked > 0.0);
  CHECK(parked <= most(loads, HoistDoing::raising, [](const HoistState& s) { return s.line; }));
}
