// What follows when the line is let go: how fast, what strikes, over whom, and what holds instead.
#include "sim/rehearsal/aftermath_watch.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "sim/rehearsal/stage.h"
#include "sim/scene/reader.h"
#include "tests/support/free_stair.h"
#include "tests/support/gallery.h"

namespace stowpath {
namespace {

constexpr double kHead = 2.0;  // [m]

Scene gallery_scene(const std::string& name) { return parse_scene(testing::rig_text(name), name); }

RehearsalReport rehearse_once(const Scene& scene, RehearsalOptions options) {
  options.compare = false;
  return rehearse(scene, build_model(scene), options);
}

RehearsalOptions finely(double let_go) {
  RehearsalOptions options{.comes_down = false, .let_go = let_go};
  options.frame = options.step;  // every pose is kept
  return options;
}

Pose2 pose_in(const RecordedFrame& frame, int section) {
  const auto& placed = frame.sections[static_cast<std::size_t>(section)];
  return make_pose(placed.origin, placed.turn);
}

// A plank from 3 m up at the wall to the floor 3 m out, half a decimetre round: lower than 1 m from 1.05 m up its axis
// on.
TEST_CASE("aftermath: a part is under head height as far as its edges are, not its corners alone", "[rehearsal]") {
  const RoundedPolygon plank = make_capsule({0.0, 3.0}, {3.0, 0.0}, 0.05);
  const Interval out = out_below(plank, 1.0);
  CHECK(out.lo == Approx(1.95 - 0.05));
  CHECK(out.hi == Approx(3.05));
  CHECK(out_below(plank, -0.1).empty());
  const Interval whole = out_below(plank, 9.0);
  CHECK(whole.lo == Approx(-0.05));
  CHECK(whole.hi == Approx(3.05));
  const Interval box = out_below(make_box({1.0, 0.5}, {2.0, 1.5}), 1.0);  // both its upper corners are above
  CHECK(box.lo == Approx(1.0));
  CHECK(box.hi == Approx(2.0));
}

// Where the parts' edges are lower than a head, looked at in points a hundredth of each edge apart.
Interval swept_in(const Model& model, const RecordedFrame& frame) {
  Interval out{1.0, 0.0};
  for (const StairPart& part : model.stair) {
    const RoundedPolygon shape = placed(part.outline, pose_in(frame, part.section));
    for (std::size_t i = 0; i < shape.core.size(); ++i)
      for (int k = 0; k <= 100; ++k) {
        const Vec2 a = shape.core[i], b = shape.core[(i + 1) % shape.core.size()], at = a + 0.01 * k * (b - a);
        if (at.y - shape.radius > model.floor_level + kHead) continue;
        const Interval reach{at.x - shape.radius, at.x + shape.radius};
        out = out.empty() ? reach : hull(out, reach);
      }
  }
  return out;
}

double foot_speed(const Model& model, const RecordedFrame& a, const RecordedFrame& b) {
  const Vec2 foot{model.linkage.length[0], 0.0};
  return norm(pose_in(b, 0) * foot - pose_in(a, 0) * foot) / (b.time - a.time);
}

TEST_CASE("aftermath: where the falling stair is lower than a head is all that is said to be swept", "[rehearsal]") {
  const Scene scene = testing::free_stair();
  const Model model = build_model(scene);
  const RehearsalReport report = rehearse_once(scene, finely(20.0));
  REQUIRE(report.aftermath);
  Interval surely{1.0, 0.0}, at_most{1.0, 0.0};
  const auto& frames = report.recording.frames;
  for (std::size_t i = 1; i < frames.size(); ++i) {
    if (frames[i].time < report.aftermath->begins) continue;
    const Interval out = swept_in(model, frames[i]);
    if (out.empty()) continue;
    at_most = at_most.empty() ? out : hull(at_most, out);
    if (foot_speed(model, frames[i - 1], frames[i]) < 0.5 || i % 8 != 0) continue;
    surely = surely.empty() ? out : hull(surely, out);
  }
  const Interval& said = report.aftermath->under;
  REQUIRE_FALSE(surely.empty());
  CHECK(said.lo <= surely.lo + 0.02);  // looked at every frame of 1/960 s, the sample every eighth
  CHECK(said.hi >= surely.hi - 0.02);
  CHECK(said.lo >= at_most.lo - 0.02);
  CHECK(said.hi <= at_most.hi + 0.02);
  CHECK(said.hi > 1.5);
  Interval stations{1.0, 0.0};
  for (const StairPart& part : model.stair)
    for (const Interval& stretch : part.stations)
      stations = stations.empty() ? stretch + frames.back().station : hull(stations, stretch + frames.back().station);
  CHECK(report.aftermath->under_stations.lo == Approx(stations.lo).margin(0.05));
  CHECK(report.aftermath->under_stations.hi == Approx(stations.hi).margin(0.05));
}

TEST_CASE("aftermath: whether the hand that pulled the line stands under it", "[rehearsal]") {
  Scene scene = testing::free_stair();
  CHECK_FALSE(rehearse_once(scene, {.let_go = 20.0}).aftermath->hand_under);  // at the wall, 2.9 m along from the stair
  scene.hoist->line.leads = {RoomPoint{{2.2, 1.2}, *scene.hoist->home}};
  CHECK(rehearse_once(scene, {.let_go = 20.0}).aftermath->hand_under);
  scene.hoist->line.leads = {RoomPoint{{2.2, 1.2}, *scene.hoist->home + 1.0}};  // as far out, but beside it
  CHECK_FALSE(rehearse_once(scene, {.let_go = 20.0}).aftermath->hand_under);
}

struct Fastest {
  double speed = 0.0;  // [m/s]
  std::string name;
};
Fastest fastest_in(const Model& model, const RehearsalReport& report) {
  const Linkage& linkage = model.linkage;
  const int last = linkage.sections - 1;
  const auto& frames = report.recording.frames;
  Fastest fastest;
  for (std::size_t i = 1; i < frames.size(); ++i) {
    if (frames[i - 1].time < report.aftermath->begins) continue;
    const auto look = [&](int section, Vec2 at, const std::string& name) {
      const Vec2 way = pose_in(frames[i], section) * at - pose_in(frames[i - 1], section) * at;
      const double speed = norm(way) / (frames[i].time - frames[i - 1].time);
      if (speed > fastest.speed) fastest = {speed, name};
    };
    look(last, {linkage.length[static_cast<std::size_t>(last)], 0.0}, "the foot");
    for (int k = 0; k < last; ++k) look(k, linkage.distal(k), "hinge " + std::to_string(k + 1));
  }
  return fastest;
}

// With the foot on the floor the hinge is what comes down; off it, the lower section swings out and its foot is faster.
TEST_CASE("aftermath: the speed told is that of the fastest end, a hinge or the foot", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const Model model = build_model(scene);
  for (const double let_go : {26.0, 45.0}) {
    const RehearsalReport report = rehearse_once(scene, finely(let_go));
    REQUIRE(report.aftermath);
    const Fastest seen = fastest_in(model, report);
    CAPTURE(let_go, seen.name, seen.speed);
    CHECK(report.aftermath->fastest == seen.name);
    CHECK(report.aftermath->top_speed == Approx(seen.speed).epsilon(0.03));
    CHECK(seen.name == (let_go < 30.0 ? "hinge 1" : "the foot"));
  }
}

// A caster grazes a press on its way to the floor.
TEST_CASE("aftermath: the first stroke is told, and the hardest", "[rehearsal]") {
  const RehearsalReport report = rehearse_once(gallery_scene("crowded-workshop"), {.let_go = 40.0});
  REQUIRE(report.aftermath);
  const Aftermath& after = *report.aftermath;
  REQUIRE(after.first);
  REQUIRE(after.hardest);
  double hardest = 0.0, first = INFINITY;
  for (const RecordedEvent& event : report.recording.events) {
    if (event.kind != RecordedEventKind::touch || event.time < after.begins || event.value < 0.1) continue;
    hardest = std::max(hardest, event.energy);
    first = std::min(first, event.time);
  }
  CHECK(after.first->time == Approx(first - after.begins));
  CHECK(after.hardest->energy >= hardest);
  CHECK(after.hardest->energy > after.first->energy);
  CHECK(after.hardest->time > after.first->time);
}

// 50 kg at the pick hold more of the energy than the stair does.
TEST_CASE("aftermath: what hangs on the pick falls with the stair, and counts", "[rehearsal]") {
  Scene scene = testing::free_stair();
  scene.hoist->spreader = Spreader{0.52, 0.25, 50.0};
  const Model model = build_model(scene);
  const RehearsalReport report = rehearse_once(scene, finely(20.0));
  REQUIRE(report.aftermath);
  const auto& frames = report.recording.frames;
  const auto at =
      std::find_if(frames.begin(), frames.end(), [&](const RecordedFrame& frame) { return frame.time >= 20.0; });
  const auto lost = [&](double mass, Vec2 where) {
    return mass * kGravity * ((pose_in(*at, 0) * where).y - (pose_in(frames.back(), 0) * where).y);
  };
  const double stair = lost(model.masses[0].mass, model.masses[0].centre);
  const double all = stair + lost(50.0, {scene.hoist->pick.along, scene.hoist->pick.across});
  REQUIRE(stair < 0.5 * all);
  CHECK(report.aftermath->energy > 0.6 * all);
  CHECK(report.aftermath->energy < 1.02 * all);
}

TEST_CASE("aftermath: as the line goes, nobody holds the fold line either", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const Model model = build_model(scene);
  Stage stage(scene, model, {.comes_down = false}, 1.0 / 960.0);
  stage.start();
  const auto folding = [&] {
    return stage.crew().move() >= 0 &&
           model.moves[static_cast<std::size_t>(stage.crew().move())].kind == MoveKind::fold;
  };
  while (!folding()) stage.advance();
  stage.advance(3 * 960);
  REQUIRE(stage.crew().fold_line().hand > 5.0);
  stage.let_go();
  stage.advance(10);
  CHECK(stage.crew().fold_line().hand == 0.0);
}

TEST_CASE("aftermath: a cleat holds what has been made fast on it, and no line in a hand", "[rehearsal]") {
  Scene scene = testing::free_stair();
  scene.hoist->cleat = true;
  const RehearsalReport up = rehearse_once(scene, {.comes_down = false});
  const double lift = up.moves.back().begins, parked = up.moves.back().ends;
  for (const double in_hand : {lift - 0.3, lift + 2.0, parked - 0.3}) {  // hooked on, not at a move yet; then at it
    const RehearsalReport falls = rehearse_once(scene, {.comes_down = false, .let_go = in_hand});
    REQUIRE(falls.aftermath);
    CAPTURE(in_hand);
    CHECK_FALSE(falls.aftermath->nothing);
  }
  const RehearsalReport held = rehearse_once(scene, {.comes_down = false, .let_go = parked + 1.0});
  REQUIRE(held.aftermath);
  CHECK(held.aftermath->nothing);
  CHECK(held.aftermath->stopped_by == "the cleat");
  CHECK_FALSE(rehearse_once(scene, {.comes_down = false, .line_breaks = parked + 1.0}).aftermath->nothing);
}

TEST_CASE("aftermath: every pin that is left out is named", "[rehearsal]") {
  const Scene scene = gallery_scene("three-section");
  const RehearsalReport both = rehearse_once(scene, {.no_pins = {1, 0}});
  REQUIRE(both.aftermath);
  CHECK(both.aftermath->cause == "the stair stands without the pins of hinges 1 and 2");
  const auto& events = both.recording.events;
  CHECK(std::count_if(events.begin(), events.end(),
                      [](const RecordedEvent& event) { return event.kind == RecordedEventKind::unpinned; }) == 2);
  CHECK(rehearse_once(scene, {.no_pins = {1}}).aftermath->cause == "the stair stands without the pin of hinge 2");
}

// The hinge is on the back face: pushed out there, the joint folds; pushed in, its stop holds it straight.
TEST_CASE("aftermath: without its pin a standing stair stays, until it is pushed the way it folds", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  const RehearsalReport still = rehearse_once(scene, {.no_pins = {0}});
  REQUIRE(still.aftermath);
  CHECK(still.aftermath->at_rest);
  CHECK(still.aftermath->top_speed < 0.1);
  const RehearsalReport out = rehearse_once(scene, {.no_pins = {0}, .push = Push{250.0, 1.1, 2.0}});
  CHECK(out.aftermath->top_speed > 0.5);
  CHECK(*out.push_swing > 0.1);
}

TEST_CASE("aftermath: without a pin the stair stands at home, or where it is said to", "[rehearsal]") {
  const Scene scene = gallery_scene("demo-cured");
  CHECK(rehearse_once(scene, {.no_pins = {0}}).recording.frames.front().station == Approx(4.17));
  CHECK(rehearse_once(scene, {.no_pins = {0}, .from = 3.0}).recording.frames.front().station ==
        Approx(3.0).margin(0.5));
}

}  // namespace
}  // namespace stowpath
