#include "sim/rehearsal/roll_push.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

#include "sim/hoist/jam.h"
#include "sim/rehearsal/roll_statics.h"
#include "sim/scene/reader.h"
#include "sim/trade/us_units.h"
#include "tests/support/gallery.h"

using namespace stowpath;

namespace {

RollReport pushed(const std::string& text, const PushOptions& options) {
  const Scene scene = parse_scene(text, "gallery");
  return roll_push(scene, build_model(scene), options);
}

PushOptions at_height(double height, double force = 120.0) {
  PushOptions options;
  options.force = force;
  options.height = height;
  return options;
}

}  // namespace

TEST_CASE("roll push: the plan's stair weighs what the stair weighs", "[rehearsal]") {
  const Scene scene = parse_scene(testing::rig_text("demo"), "demo");
  const Model model = build_model(scene);
  const SpanStair stair = span_stair(scene, model);
  double mass = 0.0, carried = 0.0, moment = 0.0;
  for (const SectionMass& section : model.masses) mass += section.mass;
  for (const SpanHook& hook : stair.hooks) carried += hook.load;
  for (const SpanCaster& caster : stair.casters) {
    carried += caster.load;
    moment += caster.load * caster.at.y;
  }
  CHECK(stair.mass == Approx(mass));
  CHECK(carried == Approx(mass * kGravity));
  CHECK(moment == Approx(mass * kGravity * stair.centre.y));
  CHECK(stair.centre.x == Approx(0.0).margin(1e-9));
  CHECK(stair.spacing() == Approx(0.522));
}

// Hooks cut from plate weigh by themselves, over where they stand.
TEST_CASE("roll push: every scene of the gallery has a plan that weighs what it weighs", "[rehearsal]") {
  for (const char* name : {"costume-loft", "crowded-workshop", "demo-cured", "long-curl", "post-rail", "rolling-ladder",
                           "strap-rail", "three-section"}) {
    CAPTURE(name);
    const Scene scene = parse_scene(testing::rig_text(name), name);
    const Model model = build_model(scene);
    const SpanStair stair = span_stair(scene, model);
    double mass = 0.0, carried = 0.0;
    for (const SectionMass& section : model.masses) mass += section.mass;
    for (const SpanHook& hook : stair.hooks) carried += hook.load;
    for (const SpanCaster& caster : stair.casters) carried += caster.load;
    CHECK(stair.mass == Approx(mass));
    CHECK(carried == Approx(mass * kGravity));
    CHECK(std::abs(stair.centre.x) < 0.05);
  }
}

TEST_CASE("roll push: an extra on one side shifts the plan's centre and loads", "[rehearsal]") {
  const std::string extra =
      "  handrails: none\n  extras: [{name: tool box, section: 1, outline: [[1000, 80], [1200, 80], [1200, 200], "
      "[1000, 200]], stations: [100, 200], mass: 10 kg}]\n";
  const Scene scene =
      parse_scene(testing::changed(testing::rig_text("demo"), "  handrails: none\n", extra), "demo");
  const Model model = build_model(scene);
  const SpanStair stair = span_stair(scene, model);
  CHECK(stair.centre.x == Approx(10.0 * 0.15 / stair.mass));
  CHECK(stair.hooks[1].load > stair.hooks[0].load);
  double moment = 0.0;
  for (const SpanHook& hook : stair.hooks) moment += hook.load * hook.x;
  for (const SpanCaster& caster : stair.casters) moment += caster.load * caster.at.x;
  CHECK(moment == Approx(stair.mass * kGravity * stair.centre.x));
}

TEST_CASE("roll push: a plank's inertia in the plan is that of a bar along its ground line", "[rehearsal]") {
  Scene scene = parse_scene(testing::rig_text("rolling-ladder"), "ladder");
  const Model model = build_model(scene);
  const SpanStair stair = span_stair(scene, model);
  // Two side rails and the rungs between: more than the rails' bars alone about their middle, less than twice that.
  double length = 0.0;
  for (const double section : scene.stair.sections) length += section;
  const double ground = length * std::sin(model.working_lean);
  CHECK(stair.inertia > stair.mass * ground * ground / 12.0 * 0.7);
  CHECK(stair.inertia < stair.mass * (ground * ground + scene.stair.width * scene.stair.width) / 12.0 * 2.0);
}

TEST_CASE("roll push: pushed low the demo's hooks jam, pushed near the rail they slide", "[rehearsal]") {
  const RollReport low = pushed(testing::rig_text("demo"), at_height(1.1));
  const RollReport high = pushed(testing::rig_text("demo"), at_height(2.5));
  CHECK_FALSE(low.runs[2].rolls);
  CHECK_FALSE(low.runs[2].push_needed);
  CHECK(low.runs[2].friction.hook > low.jam_friction);
  CHECK(low.jam_friction == Approx(jam_friction(0.522, low.offset)));
  CHECK(high.runs[2].rolls);
  REQUIRE(high.runs[2].push_needed);
  CHECK(high.runs[2].friction.hook < high.jam_friction);
  // It stands askew, by no more than its play, at the foot as well.
  CHECK(low.runs[2].yaw > 1.0 * low.stair.play() / 0.522);
  CHECK(low.runs[2].yaw < 2.0 * low.stair.play() / 0.522);
  CHECK(low.runs[2].foot_aside == Approx(low.runs[2].yaw * low.stair.casters[0].at.y).epsilon(0.001));
}

TEST_CASE("roll push: from the free height on no friction of the range jams it", "[rehearsal]") {
  const std::string text = testing::rig_text("demo");
  const double height = pushed(text, at_height(2.4)).free_height;
  CHECK(height > 1.1);
  CHECK(pushed(text, at_height(height + 0.02)).jam_friction > 0.5);
  CHECK(pushed(text, at_height(height - 0.02)).jam_friction < 0.5);
}

TEST_CASE("roll push: the easy run needs least and coasts farthest", "[rehearsal]") {
  const RollReport report = pushed(testing::rig_text("demo"), at_height(2.2));
  for (std::size_t i = 1; i < report.runs.size(); ++i) {
    REQUIRE(report.runs.at(i - 1).push_needed);
    REQUIRE(report.runs.at(i).push_needed);
    CHECK(*report.runs.at(i).push_needed > *report.runs.at(i - 1).push_needed);
    CHECK(report.runs.at(i).coasting < report.runs.at(i - 1).coasting);
  }
  for (const RollRun& run : report.runs) {
    CHECK(run.push_by_moments);
    CHECK(*run.push_needed <= *run.push_by_moments * 1.01 + 0.5);  // casters that scrub only help
    CHECK(run.energy_gained < 1e-4);
    CHECK(run.coasting_error < 0.05 * run.coasting + 0.002);
  }
}

TEST_CASE("roll push: the rail's stops are met at the span's ends, at a walk", "[rehearsal]") {
  const Scene scene = parse_scene(testing::rig_text("demo"), "demo");
  const Model model = build_model(scene);
  const RollReport report = roll_push(scene, model, at_height(2.2));
  for (const RollRun& run : report.runs) {
    REQUIRE(run.stops.size() == 2);
    const double skin = 0.7 / 960.0 + 2.0 * kSpanSkin;
    CHECK(run.stops[0].thing == "rail stop");
    CHECK(run.stops[0].station == Approx(model.span.hi).margin(skin));
    CHECK(run.stops[1].station == Approx(model.span.lo).margin(skin));
    CHECK(run.stops[0].speed == Approx(0.7).epsilon(0.1));
  }
}

TEST_CASE("roll push: a curl that fouls brackets stops where the proof's stretch begins", "[rehearsal]") {
  const Scene scene = parse_scene(testing::rig_text("long-curl"), "long-curl");
  const RollReport report = roll_push(scene, build_model(scene), at_height(2.4));
  REQUIRE(report.free.size() > 2);
  REQUIRE(report.runs[0].stops.size() == 2);
  const RollStop& right = report.runs[0].stops[0];
  CHECK(right.part == "hook curl");
  CHECK(right.thing == "bracket arm");
  double end = -1.0;
  for (const Interval& stretch : report.free) {
    if (stretch.contains(report.start)) end = stretch.hi;
  }
  CHECK(right.station == Approx(end).margin(0.002));
}

TEST_CASE("roll push: without stops the hooks leave the pipe's end", "[rehearsal]") {
  const std::string text = testing::changed(testing::rig_text("demo"), "stops: both ends", "stops: none");
  const RollReport report = pushed(text, at_height(2.2));
  REQUIRE_FALSE(report.runs[0].stops.empty());
  CHECK(report.runs[0].stops[0].part.empty());
  CHECK(report.runs[0].stops[0].speed > 0.5);
}

TEST_CASE("roll push: a tipping push is the weight's moment over the height", "[rehearsal]") {
  const RollReport report = pushed(testing::rig_text("demo"), at_height(1.0));
  // About the line from a hook to its caster, in space: lift begins where the push's moment equals the weight's.
  const SpanStair& stair = report.stair;
  const Vec2 hook{stair.hooks[1].x, 0.0}, caster = stair.casters[1].at;
  const Vec2 line = 1.0 / norm(caster - hook) * (caster - hook);
  const double weight = stair.mass * kGravity * std::abs(cross(line, stair.centre - hook));
  const double push_arm = 1.0 * line.y;  // held at the floor, pushed a metre above it, square to `out`
  CHECK(report.tips_when_blocked == Approx(weight / push_arm));
}

// Sum of load times lever about the end of a hook's and a caster's row, each by hand.
TEST_CASE("roll push: which side lifts depends on where the push passes the hold", "[rehearsal]") {
  SpanStair stair;
  stair.hooks = {{-0.3, 60.0}, {0.2, 90.0}};
  stair.casters = {{{-0.35, 1.2}, 30.0}, {{0.25, 1.2}, 40.0}};
  const double to_right = 60.0 * 0.5 + 30.0 * 0.6, to_left = 90.0 * 0.5 + 40.0 * 0.6;
  CHECK(tipping_push(stair, 100.0, 1.5, 0.0) == Approx(to_right / 1.5));
  CHECK(tipping_push(stair, -100.0, 1.5, 0.0) == Approx(to_left / 1.5));
  CHECK(tipping_push(stair, 100.0, 1.0, 3.0) == Approx(to_left / 2.0));
  CHECK(tipping_push(stair, -100.0, 1.0, 3.0) == Approx(to_right / 2.0));
  CHECK(std::isinf(tipping_push(stair, 100.0, 1.0, 1.0)));
}

TEST_CASE("roll push: it begins with a little air to what ends the free stretch", "[rehearsal]") {
  const Scene scene = parse_scene(testing::rig_text("long-curl"), "long-curl");
  Model model = build_model(scene);
  const IntervalSet free = free_stations(span_site(scene, model), model.span);
  model.home = free.front().hi;
  const double start = roll_push(scene, model, at_height(2.4)).start;
  CHECK(start < free.front().hi - 0.001);
  CHECK(start > free.front().hi - 0.01);
}

TEST_CASE("roll push: a hand that cannot push so is refused", "[rehearsal]") {
  const std::string text = testing::rig_text("demo");
  CHECK_THROWS_AS(pushed(text, at_height(3.5)), std::invalid_argument);
  CHECK_THROWS_AS(pushed(text, at_height(-0.5)), std::invalid_argument);
  CHECK_THROWS_AS(pushed(text, at_height(1.0, 0.0)), std::invalid_argument);
  PushOptions square = at_height(1.0);
  square.turned = 1.5707963;
  CHECK_THROWS_AS(pushed(text, square), std::invalid_argument);
  PushOptions run = at_height(1.0);
  run.pace = 30.0;
  CHECK_THROWS_AS(pushed(text, run), std::invalid_argument);
}
