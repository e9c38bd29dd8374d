#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "sim/hoist/pull.h"
#include "sim/rehearsal/rehearsal.h"
#include "sim/rehearsal/script.h"
#include "sim/rehearsal/stage.h"
#include "sim/scene/reader.h"
#include "tests/support/free_stair.h"
#include "tests/support/gallery.h"

namespace stowpath {
namespace {

using Catch::Matchers::Contains;

constexpr double kDegree = std::numbers::pi / 180.0;

Scene gallery_scene(const std::string& name) { return parse_scene(testing::rig_text(name), name); }

RehearsalReport rehearse_once(const Scene& scene, RehearsalOptions options = {}) {
  options.compare = false;
  return rehearse(scene, build_model(scene), options);
}

const MoveRun& backwards(const RehearsalReport& report, int move) {
  return *std::find_if(report.moves.begin(), report.moves.end(),
                       [&](const MoveRun& run) { return run.back && run.move == move; });
}

double when(const RehearsalReport& report, RecordedEventKind kind) {
  const auto& events = report.recording.events;
  const auto found =
      std::find_if(events.rbegin(), events.rend(), [&](const RecordedEvent& event) { return event.kind == kind; });
  return found == events.rend() ? NAN : found->time;
}

TEST_CASE("lowering: the script is the procedure and, once parked, all of it the other way round", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const Model model = build_model(scene);
  const auto script = script_of(scene, model, true);
  std::vector<Act> acts;
  for (const ScriptStep& step : script) acts.push_back(step.act);
  const std::vector<Act> expected{Act::go, Act::hook_on,    Act::unpin, Act::go, Act::go, Act::go, Act::go, Act::park,
                                  Act::lower_away, Act::go, Act::go,    Act::go, Act::go, Act::pin, Act::hook_off,
                                  Act::go};
  CHECK(acts == expected);
  CHECK(script.at(9).move == script.at(6).move);
  CHECK(script.at(9).back);
  CHECK(script.back().move == script.front().move);  // rolled back to where it was rolled from
  CHECK(script_of(scene, model, false).size() == 7);
}

TEST_CASE("lowering: paid out slowly, the line holds back what statics says, to one part in a hundred", "[rehearsal]") {
  Scene scene = testing::slow(testing::free_stair(), 0.1);
  for (Step& step : scene.procedure)
    if (step.kind == StepKind::lift) step.lean = 60 * kDegree;
  const RehearsalReport report = rehearse_once(scene);
  REQUIRE(report.moves.size() == 2);
  CHECK(testing::worst_share(scene, report, report.moves.back(), &PullSample::hand_lowering) < 0.01);
}

TEST_CASE("lowering: a folded stair let down by hand holds back what statics says", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const RehearsalReport report = rehearse_once(scene);
  REQUIRE(report.moves.size() == 8);
  CHECK(testing::worst_share(scene, report, report.moves[4], &PullSample::hand_lowering) < 0.01);
  CHECK(report.moves[4].peak_pull < report.moves[3].peak_pull);
  CHECK(report.bounds.energy_gain < 1e-3 * report.bounds.energy_scale);
}

TEST_CASE("lowering: the stair stands again where it stood, pinned, its line off", "[rehearsal]") {
  for (const char* name : {"demo-cured", "crowded-workshop"}) {
    INFO(name);
    const RehearsalReport report = rehearse_once(gallery_scene(name));
    REQUIRE(report.again);
    CHECK(report.gave_up.empty());
    CHECK(report.again->lean < 0.2 * kDegree);
    CHECK(report.again->foot < 0.01);
    CHECK(report.again->hooks_on_pipe);
    CHECK(when(report, RecordedEventKind::parked) < when(report, RecordedEventKind::lowers_away));
    CHECK(when(report, RecordedEventKind::pinned) < when(report, RecordedEventKind::hooked_off));
    CHECK_FALSE(report.recording.frames.back().hoist.on);
  }
}

// Without friction nothing is lost but in the rope's own damping and as the foot is set down: the hand gets back what
// it gave, to one part in two hundred. The foot stands within the engine's slop of half a millimetre.
TEST_CASE("lowering: without friction, up and down leave the stair where it was and the work comes back",
          "[rehearsal]") {
  Scene scene = testing::slow(testing::free_stair(), 0.2);
  scene.friction = {{0.0, 0.0}, {0.0, 0.0}, {0.0, 0.0}};
  scene.hoist->line.friction = SheaveFriction::ideal;
  const Model model = build_model(scene);
  Stage stage(scene, model, {}, 1.0 / 960.0);
  double most = 0.0;
  stage.start();
  while (!stage.finished()) {
    stage.advance();
    most = std::max(most, stage.crew().done_by_crew());
  }
  stage.close();
  REQUIRE(stage.report().again);
  CHECK(most > 300.0);
  CHECK(stage.crew().done_by_crew() == Approx(0.0).margin(most / 200));
  CHECK(stage.report().again->foot < 5e-4);
  CHECK(stage.report().again->lean < 0.02 * kDegree);
  CHECK(stage.report().bounds.energy_gain < 1e-3 * stage.report().bounds.energy_scale);
}

// Statics finds that the foot, let down, sticks on the floor and props the joint ("foot_sticks").
TEST_CASE("lowering: with nobody at its foot the stair stays propped, and the crew see it", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const RehearsalReport alone = rehearse_once(scene, {.hand_at_foot = false});
  CHECK_THAT(alone.gave_up, Contains("hoist line hangs loose"));
  CHECK_FALSE(alone.again);
  CHECK(std::isfinite(when(alone, RecordedEventKind::gives_up)));
  const RehearsalReport helped = rehearse_once(scene);
  CHECK(backwards(helped, 2).foot_pull > 50.0);
  CHECK(backwards(helped, 2).foot_pull <= 225.0);
}

TEST_CASE("lowering: parked on its cleat the line cannot be let go, lowering away it can", "[rehearsal]") {
  Scene scene = testing::free_stair();
  scene.hoist->cleat = true;
  const RehearsalReport whole = rehearse_once(scene);
  const double parked = when(whole, RecordedEventKind::parked), lowers = when(whole, RecordedEventKind::lowers_away);
  const RehearsalReport held = rehearse_once(scene, {.let_go = 0.5 * (parked + lowers)});
  CHECK(held.aftermath->nothing);
  CHECK(held.aftermath->stopped_by == "the cleat");
  CHECK(held.again.has_value());
  const RehearsalReport falls = rehearse_once(scene, {.let_go = lowers + 3.0});
  CHECK_FALSE(falls.aftermath->nothing);
  CHECK(falls.aftermath->top_speed > 1.0);
  CHECK(falls.moves.back().back);
}

TEST_CASE("lowering: a gust that waits for the parked stair blows before it is lowered", "[rehearsal]") {
  const RehearsalReport report = rehearse_once(testing::free_stair(), {.gust = Gust{12.0, 1.0}});
  CHECK(when(report, RecordedEventKind::gust) == Approx(when(report, RecordedEventKind::parked)).margin(0.01));
  CHECK(when(report, RecordedEventKind::gust) < when(report, RecordedEventKind::lowers_away) - 5.0);
  CHECK(*report.push_swing > 0.0);
}

}  // namespace
}  // namespace stowpath
