#include "sim/hoist/pull.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/hoist/pull_events.h"
#include "sim/scene/reader.h"
#include "tests/support/free_stair.h"
#include "tests/support/gallery.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

// One section, hooked on and lifted from where it stands to 85 degrees.
Scene lifted_scene(RoomPoint ceiling, double along) {
  Scene scene = testing::one_section_scene();
  scene.hoist->ceiling_point = ceiling;
  scene.hoist->home = ceiling.station;
  scene.hoist->pick = {1, along, 0.0};
  scene.hoist->line.leads.clear();
  return scene;
}

Model lifted_model(const Scene& scene, double lean) {
  Model model = build_model(scene);
  Configuration from;
  from.station = *scene.hoist->home;
  from.lean = model.working_lean;
  Configuration to = from;
  to.lean = lean;
  model.moves = {{1, MoveKind::lift, {{SegmentKind::straight, from, to, {}, {1.0, 0.0}}}, ZoneState::moving, true, {}}};
  return model;
}

bool happens(const PullReport& report, PullEventKind kind) {
  return std::any_of(report.events.begin(), report.events.end(),
                     [kind](const PullEvent& event) { return event.kind == kind; });
}

const PullEvent& first(const PullReport& report, PullEventKind kind) {
  return *std::find_if(report.events.begin(), report.events.end(),
                       [kind](const PullEvent& event) { return event.kind == kind; });
}

double peak(const PullReport& report) { return report.samples.at(*report.peak_raising).hand_raising; }

}  // namespace

// Moments about the pivot: T (parts) lever = W out of centre.
TEST_CASE("pull: holding is weight times the centre's distance out over the line's lever", "[hoist]") {
  const Scene scene = lifted_scene({{2.550, 4.080}, 4.000}, 1.7);
  const Model model = lifted_model(scene, 85 * kDegree);
  const PullReport report = walk_through(scene, model, {});
  REQUIRE(report.samples.size() > 100);
  for (const PullSample& sample : report.samples) {
    REQUIRE(sample.holds);
    const double moment = model.masses[0].mass * kGravity * sample.centre_out;
    CHECK(sample.hand_holding == Approx(moment / sample.line_lever).epsilon(1e-10));  // rounding
    CHECK(sample.hand_lowering < sample.hand_holding);
    CHECK(sample.hand_holding < sample.hand_raising);
  }
}

TEST_CASE("pull: friction of hooks and hinges alone eases the hand letting down and loads it hauling in", "[hoist]") {
  Scene scene = lifted_scene({{2.550, 4.080}, 4.000}, 1.7);
  scene.hoist->line.friction = SheaveFriction::ideal;
  const Model model = lifted_model(scene, 85 * kDegree);
  for (const PullSample& sample : walk_through(scene, model, {}).samples) {
    CHECK(sample.hand_lowering < sample.hand_holding * (1.0 - 1e-6));
    CHECK(sample.hand_raising > sample.hand_holding * (1.0 + 1e-6));
    CHECK(sample.hand_raising + sample.hand_lowering == Approx(2.0 * sample.hand_holding).epsilon(1e-3));  // near alike
  }
}

TEST_CASE("pull: a move that lets the stair down needs the same pulls as one that lifts it", "[hoist]") {
  const Scene scene = lifted_scene({{2.550, 4.080}, 4.000}, 1.7);
  Model up = lifted_model(scene, 85 * kDegree), down = up;
  std::swap(down.moves[0].segments[0].from, down.moves[0].segments[0].to);
  const LiftRig rig = lift_rig(scene, up, FrictionEnd::mean, 0.005);
  for (const double u : {0.0, 0.3, 0.8}) {
    const PullSample lifted = sample_pull(rig, up, 0, 0, u), let_down = sample_pull(rig, down, 0, 0, 1.0 - u);
    CHECK(lifted.hand_raising == Approx(let_down.hand_raising).epsilon(1e-12));
    CHECK(lifted.hand_lowering == Approx(let_down.hand_lowering).epsilon(1e-12));
  }
}

TEST_CASE("pull: the peak is no less than any pose's, however fine", "[hoist]") {
  const Scene scene = lifted_scene({{1.9, 4.080}, 4.000}, 1.7);
  const Model model = lifted_model(scene, 85 * kDegree);
  PullOptions fine;
  fine.step = 0.01 * kDegree;
  const double refined = peak(walk_through(scene, model, {}));
  CHECK(refined >= peak(walk_through(scene, model, fine)) * (1.0 - 1e-9));  // a flat top, refined to rounding
}

TEST_CASE("pull: rope hauled in is the line's change of length, and the rope needed spares tail and knot", "[hoist]") {
  const Scene scene = lifted_scene({{2.550, 4.080}, 4.000}, 1.7);
  const Model model = lifted_model(scene, 85 * kDegree);
  const PullReport report = walk_through(scene, model, {});
  const double down = report.samples.front().line_length, up = report.samples.back().line_length;
  CHECK(report.haul_length == Approx(down - up));
  CHECK(report.rope_needed == Approx(down + scene.hoist->line.tail + report.line.knot));
}

// The pick at 1.7 m comes level with a ceiling point close by; beyond, hauling in pulls the stair back.
TEST_CASE("pull: it is found where the line passes the pipe's axis and no longer lifts", "[hoist]") {
  const Scene scene = lifted_scene({{1.6, 4.080}, 4.000}, 1.7);
  const Model model = lifted_model(scene, 175 * kDegree);
  const PullReport report = walk_through(scene, model, {});
  REQUIRE(happens(report, PullEventKind::line_over_pivot));
  REQUIRE(happens(report, PullEventKind::cannot_lift));
  const double lean = first(report, PullEventKind::line_over_pivot).pose.lean;
  const Vec2 to = scene.hoist->ceiling_point->at - model.linkage.pivot;
  CHECK(lean == Approx(0.5 * std::numbers::pi + std::atan2(to.y, to.x)).margin(1e-9));  // halved 40 times
  CHECK(first(report, PullEventKind::cannot_lift).pose.lean == Approx(lean).margin(1e-9));
}

TEST_CASE("pull: past the upright the load changes sides and the line goes slack", "[hoist]") {
  Scene scene = lifted_scene({{0.2, 6.0}, 4.000}, 1.2);
  const Model model = lifted_model(scene, 190 * kDegree);
  const PullReport report = walk_through(scene, model, {});
  REQUIRE(happens(report, PullEventKind::centre_over_pivot));
  const Vec2 centre = model.masses[0].centre;
  CHECK(first(report, PullEventKind::centre_over_pivot).pose.lean ==
        Approx(std::numbers::pi - std::atan2(centre.y, centre.x)).margin(1e-9));
  CHECK(happens(report, PullEventKind::slack_begins));
}

TEST_CASE("pull: a ceiling point beside the pick pulls along the rail", "[hoist]") {
  Scene scene = lifted_scene({{2.550, 4.080}, 4.3}, 1.7);
  scene.hoist->home = 4.0;
  const Model model = lifted_model(scene, 85 * kDegree);
  const PullReport report = walk_through(scene, model, {});
  const PullSample& last = report.samples.back();
  const double part = (last.line_length - 2.88) / 4.0;  // the fall: 4.08 m down to 1.2 m
  double parts = 0.0;
  for (std::size_t i = 0; i < 4; ++i) parts += last.segments[i];
  CHECK(last.side_along == Approx(parts * 0.3 / part).epsilon(1e-12));
}

TEST_CASE("pull: the foot stands on the floor in a drag, leaves it in a hang, and swings plumb", "[hoist]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  const PullReport report = pull_through(scene, model);
  CHECK(happens(report, PullEventKind::foot_leaves_floor));
  CHECK(happens(report, PullEventKind::swings_plumb));
  for (const PullSample& sample : report.samples)
    if (sample.on_floor && sample.solvable) CHECK(sample.reactions.floor.y >= 0.0);
  CHECK(report.least_friction_peak <= peak(report) * (1.0 + 1e-9));
  CHECK(report.most_friction_peak >= peak(report) * (1.0 - 1e-9));
}

// A strut at angle a from plumb slides out only if tan a exceeds the floor's friction.
TEST_CASE("pull: a foot that would have to slide out against too much friction binds", "[hoist]") {
  Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  scene.friction.floor = {0.7, 0.7};
  REQUIRE(std::tan(model.working_lean) < 0.7);
  CHECK(happens(walk_through(scene, model, {}), PullEventKind::foot_binds));
  scene.friction.floor = {0.1, 0.1};
  CHECK_FALSE(happens(walk_through(scene, model, {}), PullEventKind::foot_binds));
  scene.friction.floor = {0.5, 0.5};  // near binding, the strut pushes the joint up harder than the stair weighs
  CHECK(happens(walk_through(scene, model, {}), PullEventKind::hook_lifts));
}

// Without friction the pipe gives what is left of the weight: W - T, T from moments about the pipe.
TEST_CASE("pull: with the pick inside of the centre of mass the stair would turn over about it", "[hoist]") {
  Scene scene = testing::free_stair();
  scene.friction = {{0.0, 0.0}, {0.0, 0.0}, {0.4, 0.4}};
  scene.hoist->line.friction = SheaveFriction::ideal;
  for (const double pick : {1.5, 1.85}) {
    scene.hoist->pick.along = pick;
    scene.hoist->ceiling_point->at.x = scene.rail.at.x + pick;
    const Model model = build_model(scene);
    CHECK(happens(walk_through(scene, model, {}), PullEventKind::turns_over) == (model.masses[0].centre.x > pick));
  }
}

TEST_CASE("pull: a fold line turns the lower section, and without one something else must", "[hoist]") {
  Scene scene = testing::sample_scene();
  const PullReport with = walk_through(scene, build_model(scene), {});
  CHECK(with.peak_fold);
  scene.fold_line.reset();
  const PullReport without = walk_through(scene, build_model(scene), {});
  CHECK_FALSE(without.peak_fold);
  CHECK(std::any_of(without.samples.begin(), without.samples.end(),
                    [](const PullSample& sample) { return sample.turning && std::abs(*sample.turning) > 1.0; }));
}

// Common practice, no source: folded under first, the level stair's pull is about half. Exactly half with two equal
// sections; the sample's lower one is the shorter and lighter.
TEST_CASE("pull: folding first takes a third or more off the pull at the level end", "[hoist]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  const LiftRig rig = lift_rig(scene, model, FrictionEnd::mean, 0.005);
  Configuration level;
  level.station = 4.0;
  level.lean = 88 * kDegree;
  Configuration folded = level;
  folded.folds[0] = 176 * kDegree;
  const auto holding = [&](const Configuration& pose) {
    const Move move{1,    MoveKind::lift, {{SegmentKind::straight, pose, pose, {}, {1.0, 0.0}}}, ZoneState::moving,
                    true, {true}};
    return pose_pull(rig, {move, move.segments[0], 0.0}, Haul::holding).hand;
  };
  const double share = holding(folded) / holding(level);
  CHECK(share > 0.4);
  CHECK(share < 0.67);
}

TEST_CASE("pull: a spreader's mass is lifted too, and its drop is no rope", "[hoist]") {
  Scene scene = lifted_scene({{2.550, 4.080}, 4.000}, 1.7);
  const Model model = lifted_model(scene, 85 * kDegree);
  const PullReport without = walk_through(scene, model, {});
  scene.hoist->spreader = Spreader{0.6, 0.25, 4.0};
  const PullReport with = walk_through(scene, model, {});
  const double arm = with.samples.back().pose.lean;  // the pick on the datum line, 1.7 m along
  const double more = 4.0 * kGravity * 1.7 * std::sin(arm) / with.samples.back().line_lever;
  CHECK(with.samples.back().hand_holding == Approx(without.samples.back().hand_holding + more).epsilon(1e-12));
  CHECK(with.samples.back().line_length == Approx(without.samples.back().line_length - 4 * 0.25));
}

TEST_CASE("pull: changes are ranked by benefit, and one more part pulls less and hauls more", "[hoist]") {
  const Scene scene = testing::sample_scene();
  const PullReport report = pull_through(scene, build_model(scene));
  REQUIRE(report.changes.size() >= 4);
  for (std::size_t i = 1; i < report.changes.size(); ++i)
    if (report.changes[i - 1].lifts == report.changes[i].lifts)
      CHECK(report.changes[i - 1].benefit >= report.changes[i].benefit);
  const auto more = std::find_if(report.changes.begin(), report.changes.end(),
                                 [](const PullChange& change) { return change.text.find("one more part") == 0; });
  REQUIRE(more != report.changes.end());
  CHECK(more->benefit > 0.0);
  CHECK(more->haul_length > report.haul_length);
}

TEST_CASE("pull: the gallery's hoists are all walked through", "[hoist]") {
  for (const char* name : {"demo", "demo-cured", "three-section", "costume-loft", "crowded-workshop"}) {
    INFO(name);
    const Scene scene = parse_scene(testing::rig_text(name), name);
    const PullReport report = pull_through(scene, build_model(scene));
    REQUIRE(report.peak_raising);
    CHECK(peak(report) > 0.0);
    for (const PullSample& sample : report.samples)
      if (sample.solvable)
        CHECK(sample.reactions.residual < 1e-9);  // of the stair's weight: rounding, near a dead centre
  }
}

TEST_CASE("pull: without a hoist, or with no step, there is nothing to walk", "[hoist]") {
  Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  PullOptions still;
  still.step = 0.0;
  CHECK_THROWS_AS(walk_through(scene, model, still), std::invalid_argument);
  scene.hoist.reset();
  CHECK_THROWS_AS(walk_through(scene, model, {}), std::invalid_argument);
}
