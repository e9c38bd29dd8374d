#include "sim/loads/hoist_loads.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/loads/loads.h"
#include "sim/trade/us_units.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

PullReport pulled(const Scene& scene, const Model& model) {
  PullOptions options;
  options.changes = false;
  options.step = 0.02;  // a degree: these checks look at the samples there are
  return pull_through(scene, model, options);
}

HoistLoads loads_of(const Scene& scene) {
  const Model model = build_model(scene);
  return hoist_loads(scene, model, pulled(scene, model));
}

double size_of(const Vec3& force) { return std::hypot(norm(force.side), force.along_rail); }

template <class Measure>
double greatest(const HoistLoads& loads, HoistDoing doing, Measure measure) {
  double most = 0.0;
  for (const HoistState& state : loads.states)
    if (state.doing == doing) most = std::max(most, measure(state));
  return most;
}

double hand_of(const HoistState& state) { return state.hand; }

int count_of(const HoistLoads& loads, HoistDoing doing) {
  return static_cast<int>(std::count_if(loads.states.begin(), loads.states.end(),
                                        [&](const HoistState& state) { return state.doing == doing; }));
}

}  // namespace

TEST_CASE(
    "hoist loads: the hand's greatest tension is no less than the report's peak, and no segment passes the line's",
    "[loads]") {
  const Scene scene = testing::one_section_scene();
  const Model model = build_model(scene);
  const PullReport report = pulled(scene, model);
  const HoistLoads loads = hoist_loads(scene, model, report);
  REQUIRE(report.peak_raising);
  // All of the scene's range of friction counts, not its middle alone.
  CHECK(greatest(loads, HoistDoing::raising, hand_of) >= report.samples[*report.peak_raising].hand_raising);
  CHECK(greatest(loads, HoistDoing::raising, hand_of) == Approx(report.most_friction_peak).epsilon(0.01));
  for (const HoistState& state : loads.states) {
    CHECK(state.line >= state.hand);
    CHECK(state.line >= state.dead_end);
    CHECK_FALSE(state.where.empty());
  }
}

// Without friction every segment pulls alike: at most 4 T at the pick; at the ceiling point five segments meet.
TEST_CASE("hoist loads: without friction pick and ceiling point get as many tensions as segments meet there",
          "[loads]") {
  Scene scene = testing::one_section_scene();
  scene.hoist->line.friction = SheaveFriction::ideal;
  for (const HoistState& state : loads_of(scene).states) {
    CHECK(size_of(state.pick) == Approx(4 * state.hand).epsilon(1e-9));  // its segments run side by side
    CHECK(size_of(state.ceiling) > 3 * state.hand);
    CHECK(size_of(state.ceiling) < 5 * state.hand);
  }
}

// S-TKL-geo: paid out, each sheave passes 1 / K on to the hand, so that the dead end holds K^n of what the hand does.
TEST_CASE("hoist loads: let down, the dead end holds most", "[loads]") {
  const Scene scene = testing::one_section_scene();
  const HoistLoads loads = loads_of(scene);
  REQUIRE(count_of(loads, HoistDoing::lowering) > 0);
  const double sheaves = sheave_count(hoist_rigging(scene));
  for (const HoistState& state : loads.states) {
    const double grown = std::pow(sheave_factor(scene.hoist->line.sheaves), sheaves);
    if (state.doing == HoistDoing::lowering) CHECK(state.dead_end == Approx(state.hand * grown));
    if (state.doing == HoistDoing::raising) CHECK(state.hand == Approx(state.dead_end * grown));
    if (state.doing == HoistDoing::held) CHECK(state.hand == Approx(state.dead_end));
  }
}

TEST_CASE("hoist loads: the forces on the stair balance its weight where they are greatest", "[loads]") {
  const Scene scene = testing::one_section_scene();
  const Model model = build_model(scene);
  const HoistLoads loads = hoist_loads(scene, model, pulled(scene, model));
  const double weight = model.masses[0].mass * 9.80665;
  const double hooks = greatest(loads, HoistDoing::held, [](const HoistState& state) { return norm(state.hooks); });
  CHECK(hooks < weight);  // the line takes the rest
  CHECK(hooks > 0.1 * weight);
}

TEST_CASE("hoist loads: parked, the line is at rest and takes no dynamic factor", "[loads]") {
  const HoistLoads loads = loads_of(testing::one_section_scene());
  REQUIRE(count_of(loads, HoistDoing::parked) >= 1);
  for (const HoistState& state : loads.states)
    CHECK(state.moving() == (state.doing == HoistDoing::raising || state.doing == HoistDoing::lowering));
}

TEST_CASE("hoist loads: a folding stair's lift loads its hinge and fold line, and they reach the hardware list",
          "[loads]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  const HoistLoads loads = hoist_loads(scene, model, pulled(scene, model));
  double hinge = 0.0, fold = 0.0;
  for (const HoistState& state : loads.states) {
    for (const double force : state.hinges) hinge = std::max(hinge, force);
    fold = std::max(fold, state.fold_line);
  }
  CHECK(hinge > 0.0);
  CHECK(fold > 0.0);
  const LoadsReport report = look_at_loads(scene, model, loads);
  CHECK(std::any_of(report.hardware.begin(), report.hardware.end(),
                    [](const HardwareItem& item) { return item.name == "hoist line"; }));
}

TEST_CASE("hoist loads: the stair catches at every pose, also where nothing else is known", "[loads]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  const PullReport report = pulled(scene, model);
  const HoistLoads loads = hoist_loads(scene, model, report);
  CHECK(count_of(loads, HoistDoing::snagged) == static_cast<int>(report.samples.size()));
  CHECK(loads.drive.known);
  for (const HoistState& state : loads.states)
    if (state.doing == HoistDoing::snagged) CHECK(state.hand == loads.drive.force);
}

TEST_CASE("hoist loads: poses left out are counted, and a note says why", "[loads]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  PullReport report = pulled(scene, model);
  CHECK(left_out_note({}).empty());
  HoistLoads some;
  some.left_out = {2, 1, 0};
  CHECK(left_out_note(some) ==
        "no force is known at 3 poses of the lift: 2 at a dead centre or with the foot stuck, 1 "
        "with the line slack, where the stair moves by itself");
  for (PullSample& sample : report.samples) sample.raises = true, sample.hauling = -1.0, sample.solvable = true;
  for (PullSample& sample : report.samples) sample.slack = false;
  const HoistLoads none = hoist_loads(scene, model, report);
  CHECK(none.left_out.cannot_lift == static_cast<int>(report.samples.size()));
  CHECK(count_of(none, HoistDoing::raising) == 0);
}

// Every wider range of friction holds the narrower one's ends between its own.
TEST_CASE("hoist loads: a wider range of friction never loads the line less", "[loads]") {
  Scene scene = testing::one_section_scene();
  scene.friction = {{0.3, 0.35}, {0.2, 0.2}, {0.5, 0.5}};
  const HoistLoads narrow = loads_of(scene);
  scene.friction = {{0.1, 0.6}, {0.1, 0.3}, {0.3, 0.7}};
  const HoistLoads wide = loads_of(scene);
  for (const HoistDoing doing : {HoistDoing::raising, HoistDoing::lowering}) {
    CHECK(greatest(wide, doing, hand_of) >= greatest(narrow, doing, hand_of));
    CHECK(greatest(wide, doing, [](const HoistState& s) { return size_of(s.ceiling); }) >=
          greatest(narrow, doing, [](const HoistState& s) { return size_of(s.ceiling); }));
  }
}
