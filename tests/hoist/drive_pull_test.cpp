#include "sim/hoist/drive_pull.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/hoist/winch.h"
#include "sim/loads/hoist_loads.h"
#include "sim/scene/reader.h"
#include "sim/trade/strength.h"
#include "sim/trade/us_units.h"
#include "tests/support/gallery.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

// W18 (derived): drum 3.000 in, rope 3/8 in, 20 turns to one, efficiency 0.35, crank 8 in.
Scene worked_winch() {
  Scene scene = testing::one_section_scene();
  Winch winch;
  winch.drum = 3.000 * kInch;
  winch.ratio = 20.0;
  winch.crank = 8.0 * kInch;
  winch.efficiency = 0.35;
  scene.hoist->line.diameter = 0.375 * kInch;
  scene.hoist->pulled_by = PulledBy::crank_winch;
  scene.hoist->winch = winch;
  return scene;
}

Scene motor(std::optional<double> torque, std::optional<double> stall) {
  Scene scene = worked_winch();
  scene.hoist->pulled_by = PulledBy::powered_winch;
  scene.hoist->winch->crank.reset();
  scene.hoist->winch->torque = torque;
  scene.hoist->winch->stall = stall;
  return scene;
}

}  // namespace

// W18: 200 lb on the line ask 6.027 lb of the handle; turned round, the listed 30 lb (S-HUM-crank30, printed as 133 N)
// pull 995.5 lb.
TEST_CASE("drive pull: a crank at the listed force pulls W18's line with 996 lb", "[hoist][published]") {
  const Scene scene = worked_winch();
  const double by_w18 = 200.0 * 30.0 / 6.027;
  CHECK(drive_pull(scene).force / kPoundForce == Approx(by_w18).epsilon(0.004));  // 133 N are 29.9 lb
  CHECK(drive_pull(scene).known);
  const WinchRun run = winch_run(*scene.hoist->winch, scene.hoist->line.diameter, 0.0, drive_pull(scene).force, 30.0);
  CHECK(run.handle_force.value() == Approx(133.0));
}

// Closed form: parts that run plumb and a fall led off level; two parts and their dead end pull down with 2 T, the fall
// aside with T. 996 lb at three segments side by side put 2,988 lb there, at 2 plumb and one 98.6 degrees off them
// 2,050.
TEST_CASE("drive pull: a snag's pull on the ceiling point is the vector sum of the segments that meet there",
          "[hoist]") {
  Scene scene = worked_winch();
  scene.hoist->line.parts = 2;
  const Model model = build_model(scene);
  PullOptions options;
  options.changes = false;
  options.step = 0.05;
  const PullReport report = pull_through(scene, model, options);
  const double T = drive_pull(scene).force;
  for (const PullSample& sample : report.samples) {
    const auto segments = rope_segments(report.line, model.linkage, sample.pose);
    Vec3 sum;  // dead end and second part leave the ceiling point, and so does the fall
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}, std::size_t{2}}) {
      const double sign = i == 1 ? -1.0 : 1.0;  // segment 1 comes up to it
      sum.side = sum.side + sign * segments[i].pull.side;
      sum.along_rail += sign * segments[i].pull.along_rail;
    }
    const HoistLoads loads = hoist_loads(scene, model, [&] {
      PullReport one = report;
      one.samples = {sample};
      return one;
    }());
    for (const HoistState& state : loads.states) {
      if (state.doing != HoistDoing::snagged) continue;
      CHECK(std::hypot(norm(state.ceiling.side), state.ceiling.along_rail) ==
            Approx(T * std::hypot(norm(sum.side), sum.along_rail)));
    }
    if (&sample - report.samples.data() > 4) break;
  }
}

// The costume loft's winch is W18's: the listed 30 lb on its crank pull 995.6 lb. With friction along, as hauling
// shares it, its ceiling point would get up to about 2,000 lb; at rest nothing says which way friction holds, and
// without it the ceiling point gets more.
TEST_CASE("drive pull: in the costume loft a snag puts over a ton on the ceiling point", "[hoist][published]") {
  const Scene scene = parse_scene(testing::rig_text("costume-loft"), "costume-loft");
  const Model model = build_model(scene);
  PullOptions options;
  options.changes = false;
  options.step = 0.02;
  const HoistLoads loads = hoist_loads(scene, model, pull_through(scene, model, options));
  CHECK(loads.drive.force / kPoundForce == Approx(995.6).epsilon(0.004));  // 133 N are 29.9 lb
  double most = 0.0;
  for (const HoistState& state : loads.states)
    if (state.doing == HoistDoing::snagged)
      most = std::max(most, std::hypot(norm(state.ceiling.side), state.ceiling.along_rail));
  CHECK(most / kPoundForce > 2050.0);
  CHECK(most / kPoundForce < 3.0 * 996.0);  // three segments meet there
}

TEST_CASE("drive pull: a hand counts at the greatest published pull that fits", "[hoist]") {
  const Scene scene = testing::one_section_scene();
  CHECK(drive_pull(scene).force == greatest_figure(Effort::pull_down));
  CHECK(greatest_figure(Effort::pull_down) == 545.0);  // S-HUM-vert, from memory
  CHECK(drive_pull(scene).source->status == SourceStatus::memory);
}

TEST_CASE("drive pull: a motor's torque at a speed is less than it stalls at, which has to be said", "[hoist]") {
  CHECK_FALSE(drive_pull(motor(std::nullopt, std::nullopt)).known);
  const DrivePull some = drive_pull(motor(10.0, std::nullopt));
  CHECK_FALSE(some.known);
  CHECK(some.force == Approx(10.0 * 20.0 * 0.35 / (0.5 * 3.375 * kInch)));
  const DrivePull stalls = drive_pull(motor(10.0, 4000.0));
  CHECK(stalls.known);
  CHECK(stalls.force == 4000.0);
}

TEST_CASE("drive pull: an overload device lets no more through, and makes an unsaid drive known", "[hoist]") {
  Scene scene = motor(std::nullopt, std::nullopt);
  scene.hoist->overload = 600.0;
  CHECK(drive_pull(scene).known);
  CHECK(drive_pull(scene).limited);
  CHECK(drive_pull(scene).force == 600.0);
  Scene weak = testing::one_section_scene();
  weak.hoist->overload = 5000.0;
  CHECK(drive_pull(weak).force == 545.0);
  CHECK_FALSE(drive_pull(weak).limited);
}

// S-WINCH-supplier prints 60 to 80 %: what lifts is held against the lower end, what a snag pulls against the upper
// one.
TEST_CASE("drive pull: a winch whose efficiency is not said loses least when the stair catches", "[hoist][published]") {
  Scene scene = worked_winch();
  scene.hoist->winch->efficiency.reset();
  CHECK(winch_efficiency(*scene.hoist->winch).share == 0.60);
  CHECK(best_winch_efficiency(*scene.hoist->winch).share == 0.80);
  CHECK(drive_pull(scene).force == Approx(drive_pull(worked_winch()).force * 0.80 / 0.35));
}
