#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "sim/rehearsal/rehearsal.h"
#include "sim/scene/reader.h"
#include "tests/support/free_stair.h"
#include "tests/support/gallery.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kUpTo = 80 * kDegree;

// A stair in one piece on a line that is plumb at the end of its lift, nothing rubbing, hooks with a short curl.
Scene lifted(double pick, double wrap) {
  Scene scene = testing::free_stair();
  scene.friction = {{0.0, 0.0}, {0.0, 0.0}, {0.4, 0.4}};
  scene.hoist->line.friction = SheaveFriction::ideal;
  scene.hoist->pick.along = pick;
  scene.hoist->ceiling_point->at.x = scene.rail.at.x + pick * std::sin(kUpTo);
  scene.stair.hooks.wrap = wrap;
  for (Step& step : scene.procedure)
    if (step.kind == StepKind::lift) step.lean = kUpTo;
  return scene;
}

// Three forces: weight at the centre of mass, the line from pick to ceiling, the pipe. Where the pipe presses on the
// hook, from its crown towards the curl [rad].
double seat_by_moments(const Scene& scene, const Model& model, double lean) {
  const Pose2 X_W = make_pose(model.linkage.pivot, lean - 0.5 * std::numbers::pi);
  const Vec2 centre = X_W * model.masses[0].centre - model.linkage.pivot;
  const Vec2 pick = X_W * Vec2{scene.hoist->pick.along, scene.hoist->pick.across} - model.linkage.pivot;
  const Vec2 way = scene.hoist->ceiling_point->at - model.linkage.pivot - pick, side = (1.0 / norm(way)) * way;
  const double weight = model.masses[0].mass * kGravity, line = weight * centre.x / cross(pick, side);
  const Vec2 on_hook = X_W.turn_back(Vec2{0.0, weight} - line * side);
  return std::atan2(-on_hook.y, -on_hook.x);
}

// The lean from which the pipe would have to press past the curl's end.
double leaves_at(const Scene& scene, const Model& model) {
  const double end = scene.stair.hooks.wrap - 0.5 * std::numbers::pi;
  for (double lean = model.working_lean; lean < kUpTo; lean += 0.01 * kDegree)
    if (seat_by_moments(scene, model, lean) > end) return lean;
  return INFINITY;
}

RehearsalReport rehearsed(const Scene& scene) {
  return rehearse(scene, build_model(scene), {.compare = false, .comes_down = false});
}

double lean_at(const RehearsalReport& report, double time) {
  const auto& frames = report.recording.frames;
  return testing::lean_of(
      *std::find_if(frames.begin(), frames.end(), [&](const RecordedFrame& frame) { return frame.time >= time; }));
}

// The pick 0.18 m nearer the rail than the centre of mass (1.68 m along).
TEST_CASE("turning over: a pick inside of the centre of mass turns the stair over, from the lean that moments give",
          "[rehearsal]") {
  const Scene scene = lifted(1.5, 130 * kDegree);
  const Model model = build_model(scene);
  const RehearsalReport report = rehearsed(scene);
  REQUIRE(report.aftermath);
  CHECK(report.aftermath->cause == "the stair turns over about its pick");
  CHECK(report.aftermath->hooks_left);
  CHECK(report.aftermath->turned > 20 * kDegree);
  CHECK_FALSE(report.aftermath->under.empty());
  const auto& events = report.recording.events;
  CHECK(std::any_of(events.begin(), events.end(),
                    [](const RecordedEvent& event) { return event.kind == RecordedEventKind::turns_over; }));
  REQUIRE_FALSE(report.hooks_off.empty());
  // The hooks are given a twentieth of a second, at a degree a second and more.
  CHECK(lean_at(report, report.hooks_off.front().from) == Approx(leaves_at(scene, model)).margin(0.5 * kDegree));
}

TEST_CASE("turning over: a pick beyond the centre of mass, or a long curl, holds the stair", "[rehearsal]") {
  const Scene beyond = lifted(1.85, 130 * kDegree);
  CHECK(leaves_at(beyond, build_model(beyond)) == INFINITY);
  for (const Scene& scene : {beyond, lifted(1.5, 200 * kDegree)}) {
    const RehearsalReport report = rehearsed(scene);
    CHECK_FALSE(report.aftermath);
    CHECK(lean_at(report, report.moves.back().ends) == Approx(kUpTo).margin(1.0 * kDegree));
  }
}

TEST_CASE("turning over: the folded demo does it with a low pick and a short curl", "[rehearsal]") {
  Scene scene = parse_scene(testing::rig_text("demo-cured"), "demo-cured");
  scene.hoist->pick.along = 0.7;
  scene.stair.hooks.wrap = 130 * kDegree;
  const RehearsalReport report = rehearsed(scene);
  REQUIRE(report.aftermath);
  CHECK(report.aftermath->cause == "the stair turns over about its pick");
  CHECK(report.aftermath->first.has_value());
}

}  // namespace
}  // namespace stowpath
