#include "sim/rehearsal/rehearsal.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "sim/hoist/pull.h"
#include "sim/mechanism/standing.h"
#include "sim/rehearsal/recording_text.h"
#include "sim/rehearsal/side_world.h"
#include "sim/scene/reader.h"
#include "tests/support/free_stair.h"
#include "tests/support/gallery.h"
#include "tests/support/sample_scene.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

Scene gallery_scene(const std::string& name) { return parse_scene(testing::rig_text(name), name); }

// The way up alone, where nothing else is said.
RehearsalReport rehearse_once(const Scene& scene, RehearsalOptions options = {.comes_down = false}) {
  options.compare = false;
  return rehearse(scene, build_model(scene), options);
}

// Friction at hook and sheaves acts as in the statics, and the stair moves at a few millimetres a second.
TEST_CASE("rehearsal: a stair hauled slowly pulls as statics says, to one part in a hundred", "[rehearsal]") {
  Scene scene = testing::slow(testing::free_stair(), 0.1);
  for (Step& step : scene.procedure)
    if (step.kind == StepKind::lift) step.lean = 60 * kDegree;
  const RehearsalReport report = rehearse_once(scene);
  REQUIRE(report.moves.size() == 1);
  CHECK(testing::worst_share(scene, report, report.moves[0], &PullSample::hand_raising) < 0.01);
}

TEST_CASE("rehearsal: a folded stair lifted by hand pulls as statics says, to one part in a hundred", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const RehearsalReport report = rehearse_once(scene);
  REQUIRE(report.moves.size() == 4);
  CHECK(testing::worst_share(scene, report, report.moves[3], &PullSample::hand_raising) < 0.01);
  CHECK(report.aftermath == std::nullopt);
  CHECK(report.touches.empty());
  CHECK(report.zones.empty());
  CHECK(report.slack.empty());
  CHECK(report.bounds.energy_gain < 1e-3 * report.bounds.energy_scale);
}

// At rest friction is left out: the line holds what statics without friction says.
TEST_CASE("rehearsal: parked, the line holds what statics says", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const Model model = build_model(scene);
  const RehearsalReport report = rehearse(scene, model, {.compare = false, .comes_down = false});
  const PullReport pull = pull_through(scene, model);
  const RecordedFrame& last = report.recording.frames.back();
  CHECK(last.hoist.pull == Approx(pull.samples.back().hand_holding).epsilon(0.02));
  CHECK(testing::lean_of(last) == Approx(88 * kDegree).margin(0.1 * kDegree));
}

TEST_CASE("rehearsal: what the dry fit finds on the demo's way, the stair runs into", "[rehearsal]") {
  const RehearsalReport report = rehearse_once(gallery_scene("demo"));
  const DryFit fit = testing::dry_fit_of(testing::rig_text("demo"));
  REQUIRE_FALSE(report.touches.empty());
  for (const TouchRun& touch : report.touches) {
    INFO(touch.part << " and " << touch.other);
    CHECK(testing::find(fit, FindingKind::interference, touch.part, touch.other) != nullptr);
    CHECK(touch.gap < kWorldSkin);
  }
  CHECK_FALSE(report.zones.empty());
}

// |PH| + |HF| - |PF|: how much longer the stair is while its hinge comes through the line from pipe to foot.
double lengthening(const Model& model) {
  Configuration pose;
  pose.lean = model.working_lean;
  const SectionPoses X_W = place_sections(model.linkage, pose);
  const Vec2 hinge = X_W[0] * model.linkage.distal(0) - model.linkage.pivot;
  const auto caster = std::find_if(model.stair.begin(), model.stair.end(),
                                   [](const StairPart& part) { return part.kind == PartKind::caster; });
  const Vec2 foot = X_W[1] * bounding_disc(caster->outline).centre - model.linkage.pivot;
  return norm(hinge) + norm(foot - hinge) - norm(foot);
}

// Of the floor's friction, statics says from where on the toggle lifts the hooks: on a floor that gives way it slides
// the foot out instead. Pushed up harder still, the hooks slide on the pipe besides.
TEST_CASE("rehearsal: on a floor that grips, hooks lift in a drag by what the joint lengthens the stair",
          "[rehearsal]") {
  Scene scene = gallery_scene("demo-cured");
  const Model model = build_model(scene);
  for (const double friction : {0.1, 0.3, 0.4, 0.5}) {
    INFO(friction);
    scene.friction.floor = {friction, friction};
    const auto events = walk_through(scene, model, {}).events;
    const bool presses_up = std::any_of(events.begin(), events.end(),
                                        [](const PullEvent& event) { return event.kind == PullEventKind::hook_lifts; });
    const RehearsalReport report = rehearse(scene, model, {.compare = false, .comes_down = false, .line_breaks = 10.0});
    const bool lifts = !report.hooks_off.empty() && report.hooks_off.front().from < 10.0;
    CHECK(lifts == presses_up);
    if (!lifts) continue;
    CHECK(report.hooks_off.front().lift > lengthening(model) - 3e-4);
    if (friction < 0.5) CHECK(report.hooks_off.front().lift == Approx(lengthening(model)).margin(3e-4));
  }
}

TEST_CASE("rehearsal: let go, the stair comes down, and the report says how hard and over whom", "[rehearsal]") {
  const RehearsalReport report = rehearse_once(gallery_scene("demo-cured"), {.let_go = 30.0});
  REQUIRE(report.aftermath);
  const Aftermath& after = *report.aftermath;
  CHECK_FALSE(after.nothing);
  CHECK(after.at_rest);
  CHECK(after.begins == Approx(30.0).margin(2e-3));
  REQUIRE(after.first);
  CHECK(after.first->other == "floor");
  CHECK(after.top_speed > 2.0);
  REQUIRE_FALSE(after.under.empty());
  CHECK(after.under.lo > 0.0);
  CHECK(after.under.hi < 4.6);
  CHECK(after.energy > after.hardest->energy);
  CHECK(report.bounds.energy_gain < 0.01 * report.bounds.energy_scale);
  const RehearsalReport broken = rehearse_once(gallery_scene("demo-cured"), {.line_breaks = 30.0});
  CHECK(broken.aftermath->top_speed == after.top_speed);
}

// The joint comes down on the propped foot, straightens the stair and makes it longer than the way to the pipe.
TEST_CASE("rehearsal: let go while the foot drags, the hooks come off the pipe", "[rehearsal]") {
  const RehearsalReport report = rehearse_once(gallery_scene("demo-cured"), {.let_go = 12.0});
  REQUIRE(report.aftermath);
  CHECK(report.aftermath->hooks_left);
  CHECK(report.hooks_off.back().lift > 0.03);
}

// 1/2 m v^2 of what falls cannot be more than it has lost in height, nor less than a tenth of it after a clear drop.
TEST_CASE("rehearsal: a falling stair is no faster than its height allows", "[rehearsal]") {
  const Scene scene = testing::free_stair();
  const Model model = build_model(scene);
  const RehearsalReport report = rehearse(scene, model, {.compare = false, .let_go = 20.0});
  REQUIRE(report.aftermath);
  const auto at = [&](double time) {
    const auto frame = std::find_if(report.recording.frames.begin(), report.recording.frames.end(),
                                    [&](const RecordedFrame& f) { return f.time >= time; });
    const Pose2 X_W = make_pose(frame->sections[0].origin, frame->sections[0].turn);
    return (X_W * model.masses[0].centre).y;
  };
  const double drop = at(20.0) - at(report.aftermath->ends - 0.1);
  const double lost = model.masses[0].mass * kGravity * drop;
  CHECK(report.aftermath->energy < 1.02 * lost);
  CHECK(report.aftermath->energy > 0.5 * lost);
}

TEST_CASE("rehearsal: a worm holds what is let go, while it is hauled too", "[rehearsal]") {
  Scene worm = testing::slow(testing::free_stair(), 0.3);
  worm.hoist->winch->worm_lead = 3 * kDegree;
  worm.hoist->winch->worm_friction = 0.12;
  const RehearsalReport held = rehearse_once(worm, {.comes_down = false, .let_go = 5.0});
  REQUIRE(held.aftermath);
  CHECK(held.aftermath->stopped_by == "the worm's friction");
  CHECK(held.moves.back().leans[0] > 80 * kDegree);
}

// Section 2 leans with section 1 while pinned; loose and off the floor it swings through plumb and as far beyond.
TEST_CASE("rehearsal: unpinned in the air, the lower section swings through plumb", "[rehearsal]") {
  Scene scene = testing::sample_scene();
  scene.obstacles.clear();
  std::vector<Step> steps;
  for (Step step : scene.procedure) {
    if (step.kind == StepKind::drag) {
      step.kind = StepKind::lift;
      step.lean = 65 * kDegree;
      steps.insert(steps.end() - 1, step);  // lifted before the pin is pulled
    } else {
      steps.push_back(step);
    }
  }
  scene.procedure = steps;
  for (std::size_t i = 0; i < scene.procedure.size(); ++i) scene.procedure[i].at = {100 + static_cast<int>(i), 5, 1};
  scene.procedure.resize(4);  // roll, hook on, lift, unpin
  const RehearsalReport report = rehearse_once(scene);
  REQUIRE(report.loose.size() == 1);
  CHECK(report.loose[0].swings > 40 * kDegree);
  CHECK(report.loose[0].to_lean < -10 * kDegree);
}

TEST_CASE("rehearsal: a pull that nobody can give stalls", "[rehearsal]") {
  const RehearsalReport report = rehearse_once(gallery_scene("demo"));
  CHECK(report.moves.back().stalled > 1.0);
  CHECK(report.moves.back().peak_pull < 600.0);
}

TEST_CASE("rehearsal: pushed, the standing stair swings out and comes back", "[rehearsal]") {
  Scene scene = testing::free_stair();
  scene.procedure.clear();
  const RehearsalReport report = rehearse_once(scene, {.push = Push{150.0, 1.1, 1.0}});
  REQUIRE(report.push_swing);
  CHECK(*report.push_swing > 2 * kDegree);
  CHECK(report.push_at == Approx(1.1).margin(0.01));
  const RehearsalReport held = rehearse_once(scene, {.push = Push{-20.0, 1.1, 1.0}});
  CHECK(*held.push_swing < 1 * kDegree);
}

// The bound states what a second run at half the step shows.
TEST_CASE("rehearsal: the same run gives the same bits, and half the step nearly the same numbers", "[rehearsal]") {
  const Scene scene = testing::free_stair();
  const Model model = build_model(scene);
  const RehearsalOptions up{.comes_down = false};
  const RehearsalReport first = rehearse(scene, model, up), again = rehearse(scene, model, up);
  REQUIRE(first.recording.frames.size() == again.recording.frames.size());
  CHECK(first.recording.frames.back().sections[0].turn == again.recording.frames.back().sections[0].turn);
  CHECK(first.recording.frames.back().hoist.pull == again.recording.frames.back().hoist.pull);
  CHECK(first.bounds.compared);
  CHECK(first.bounds.pull < 2.0);
  CHECK(first.bounds.lean < 0.1 * kDegree);
}

// Its lean at that moment is another at another step, by degrees; what it swings about is not.
TEST_CASE("rehearsal: a section that still swings is compared by the middle of its swing", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const RehearsalReport report = rehearse(scene, build_model(scene));
  const MoveRun& hang = report.moves[1];
  REQUIRE(hang.swing > 1 * kDegree);
  CHECK(std::abs(hang.leans[1] - hang.about[1]) <= 0.501 * hang.swing);
  CHECK(report.bounds.lean < 0.5 * kDegree);
  CHECK(report.bounds.swing > report.bounds.lean);
}

TEST_CASE("rehearsal: a stiff rope gets a finer step", "[rehearsal]") {
  Scene scene = testing::free_stair();
  scene.hoist->line.strength = 5e6;
  const RehearsalReport report = rehearse_once(scene);
  CHECK_FALSE(report.refused);
  CHECK(report.bounds.step < 1.0 / 961.0);
  scene.hoist->line.strength = 1e12;
  CHECK(rehearse_once(scene).refused);
}

TEST_CASE("rehearsal: a negative time, a step of nothing or a hinge that is not there is refused", "[rehearsal]") {
  const Scene scene = testing::free_stair();
  CHECK_THROWS_AS(rehearse_once(scene, {.step = 0.0}), std::invalid_argument);
  CHECK_THROWS_AS(rehearse_once(scene, {.let_go = -1.0}), std::invalid_argument);
  CHECK_THROWS_AS(rehearse_once(scene, {.no_pins = {0}}), std::invalid_argument);
}

TEST_CASE("rehearsal: it says every second of both runs how far it is, and runs the same", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const Model model = build_model(scene);
  RehearsalOptions options{.comes_down = false};
  const RehearsalReport quiet = rehearse(scene, model, options);
  std::vector<double> told;
  options.progress = [&](double time) { told.push_back(time); };
  const RehearsalReport watched = rehearse(scene, model, options);
  CHECK(write_recording(watched.recording) == write_recording(quiet.recording));
  REQUIRE(told.size() > 20);
  for (const std::size_t k : {std::size_t{0}, told.size() / 4}) CHECK(std::count(told.begin(), told.end(), told[k]) == 2);
  CHECK(std::all_of(told.begin(), told.end(), [](double time) { return time == std::floor(time); }));
}

}  // namespace
}  // namespace stowpath
