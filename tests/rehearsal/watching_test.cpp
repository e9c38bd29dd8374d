// What is kept of a run while it goes on: zones, slack, loose sections, and a crew that does not get there.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "sim/rehearsal/stage.h"
#include "sim/scene/reader.h"
#include "tests/support/free_stair.h"
#include "tests/support/gallery.h"
#include "tests/support/sample_scene.h"

namespace stowpath {
namespace {

using Catch::Matchers::Contains;

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kStep = 1.0 / 960.0;

Scene gallery_scene(const std::string& name) { return parse_scene(testing::rig_text(name), name); }

RehearsalReport rehearse_once(const Scene& scene, RehearsalOptions options) {
  options.compare = false;
  return rehearse(scene, build_model(scene), options);
}

// Looked at with every step, whatever the time between frames: here a single frame is kept.
TEST_CASE("watching: a zone that is entered between two frames is entered", "[rehearsal]") {
  Scene scene = gallery_scene("demo");
  RehearsalOptions options{.comes_down = false};
  const auto entered = [&] {
    std::vector<std::string> names;
    for (const ZoneRun& run : rehearse_once(scene, options).zones) names.push_back(run.part + " " + run.zone);
    std::sort(names.begin(), names.end());
    return names;
  };
  const auto often = entered();
  options.frame = 1000.0;
  REQUIRE_FALSE(often.empty());
  CHECK(entered() == often);
}

TEST_CASE("watching: a line that is slack at the end has hung slack", "[rehearsal]") {
  const RehearsalReport report = rehearse_once(gallery_scene("demo-cured"), {.hand_at_foot = false});
  REQUIRE_THAT(report.gave_up, Contains("hangs loose"));
  REQUIRE_FALSE(report.slack.empty());
  CHECK(report.slack.back().open);
  CHECK(report.slack.back().to == report.seconds);
  CHECK(report.slack.back().to - report.slack.back().from > 5.0);  // they wait six seconds before they give up
}

// Lifted pinned, then both pins pulled, one after the other.
Scene two_pins_pulled(int first, int second) {
  Scene scene = gallery_scene("three-section");
  std::vector<Step> steps;
  for (const Step& step : scene.procedure)
    if (step.kind == StepKind::roll || step.kind == StepKind::hook_on) steps.push_back(step);
  Step lift = scene.procedure.back(), unpin = steps.back();
  lift.lean = 60 * kDegree;
  unpin.kind = StepKind::unpin;
  steps.push_back(lift);
  for (const int hinge : {first, second}) {
    unpin.hinge = hinge;
    steps.push_back(unpin);
  }
  for (std::size_t i = 0; i < steps.size(); ++i) steps[i].at = {100 + static_cast<int>(i), 5, 1};
  scene.procedure = steps;
  return scene;
}

TEST_CASE("watching: a section let loose is watched on when the next pin is pulled", "[rehearsal]") {
  const Scene scene = two_pins_pulled(2, 1);
  const RehearsalReport report = rehearse_once(scene, {.comes_down = false});
  REQUIRE(report.loose.size() == 2);
  const auto& frames = report.recording.frames;
  const auto lean = [](const RecordedFrame& frame, std::size_t section) {
    return frame.sections[section].turn + 0.5 * std::numbers::pi;
  };
  for (const LooseRun& run : report.loose) {
    const auto section = static_cast<std::size_t>(run.hinge) + 1;
    double from = NAN, swings = 0.0;
    for (const RecordedFrame& frame : frames) {
      if (frame.time < run.time) continue;
      if (std::isnan(from)) from = lean(frame, section);
      swings = std::max(swings, std::abs(lean(frame, section) - from));
    }
    CAPTURE(run.hinge);
    CHECK(run.swings == Approx(swings).margin(0.5 * kDegree));  // seen 25 times a second
  }
  double before_second = 0.0;
  for (const RecordedFrame& frame : frames)
    if (frame.time >= report.loose[0].time && frame.time < report.loose[1].time)
      before_second = std::max(before_second, std::abs(lean(frame, 2) - 60 * kDegree));
  CHECK(report.loose[0].swings > before_second + 2 * kDegree);  // so that a watch that ends then is seen
}

// Pin 2 comes out, and section 3 swings: it does not go in again.
TEST_CASE("watching: a crew that gives up on the way up has parked nothing", "[rehearsal]") {
  Scene scene = gallery_scene("three-section");
  const auto last = std::find_if(scene.procedure.begin(), scene.procedure.end(),
                                 [](const Step& step) { return step.kind == StepKind::unpin && step.hinge == 2; });
  Step pin = *last;
  pin.kind = StepKind::pin;
  scene.procedure.erase(last + 1, scene.procedure.end());
  scene.procedure.push_back(pin);
  const Model model = build_model(scene);
  Stage stage(scene, model, {.comes_down = false}, kStep);
  REQUIRE(stage.run());
  REQUIRE_THAT(stage.report().gave_up, Contains("pin 2 does not go in"));
  CHECK_FALSE(stage.crew().parked());
  CHECK(stage.crew().state() == ZoneState::moving);
}

// Hung up, the stair is taken along the rail: the step in which the world follows is no step without the line.
TEST_CASE("watching: taken to another station, the stair hangs on its line all the while", "[rehearsal]") {
  std::string text = testing::rig_text("demo-cured");
  text = testing::changed(text, "rolls: no", "rolls: yes");
  text = testing::changed(text, ", lead: {out: 4400, up: 3900, station: 4170}", "");
  text = testing::changed(text, "tolerances:", "  - roll: 3000\ntolerances:");
  const Scene scene = parse_scene(text, "along");
  const Model model = build_model(scene);
  Stage stage(scene, model, {.comes_down = false}, kStep);
  stage.start();
  const auto stands = [&] { return std::abs(stage.world().station() - 3.0) < 1e-6; };
  double before = 0.0;
  while (!stands() && stage.time() < 300.0) {
    before = stage.world().motion(0).rate;
    stage.advance();
  }
  REQUIRE(stands());
  // Without its line it would gain 3 g / 2 L of a rod of 1.78 m in a step: 8.6e-3 rad/s.
  CHECK(std::abs(stage.world().motion(0).rate - before) < 1e-3);
  CHECK(stage.crew().line().hand > 0.0);
}

TEST_CASE("watching: parts of two sections that overlap are named, once", "[rehearsal]") {
  Scene scene = testing::sample_scene();
  scene.obstacles.clear();
  const Extra first = scene.stair.extras.front();
  Extra staple = first, hasp = first;
  staple.name = "staple";
  staple.outline = {{1.70, -0.20}, {1.78, -0.20}, {1.78, -0.15}, {1.70, -0.15}};
  hasp.name = "hasp";
  hasp.section = 2;
  hasp.outline = {{-0.05, -0.18}, {0.05, -0.18}, {0.05, -0.13}, {-0.05, -0.13}};
  scene.stair.extras.push_back(staple);
  scene.stair.extras.push_back(hasp);
  const RehearsalReport report = rehearse_once(scene, {.comes_down = false});
  CHECK(std::count(report.met_from_start.begin(), report.met_from_start.end(), "staple and hasp") == 1);
}

}  // namespace
}  // namespace stowpath
