#include "sim/mechanism/procedure.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/support/sample_scene.h"
#include "tests/support/scene_fault.h"

using namespace stowpath;
using stowpath::testing::one_section_scene;
using stowpath::testing::sample_scene;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

enum SampleStep { kRoll, kHookOn, kUnpin, kDrag, kHang, kFold, kLift };

Scene without(Scene scene, int step) {
  scene.procedure.erase(scene.procedure.begin() + step);
  return scene;
}

Step step(StepKind kind) {
  Step out;
  out.kind = kind;
  return out;
}

Step to_lean(StepKind kind, double degrees) {
  Step out = step(kind);
  out.lean = degrees * kDegree;
  return out;
}

Step roll_to(double station) {
  Step out = step(StepKind::roll);
  out.station = station;
  return out;
}

Step fold_to(double degrees) {
  Step out = step(StepKind::fold);
  out.folds = {degrees * kDegree};
  return out;
}

Step hinge_step(StepKind kind, int hinge) {
  Step out = step(kind);
  out.hinge = hinge;
  return out;
}

Scene then(Scene scene, const Step& last) {
  scene.procedure.push_back(last);
  return scene;
}

Scene rolling(Scene scene) {
  scene.hoist->rolls = true;
  scene.hoist->line.leads.clear();
  return scene;
}

void check_refused(const Scene& scene, int step, const std::string& problem, const std::string& hint) {
  const Diagnostic fault = testing::fault_of([&] { build_model(scene); });
  CHECK(fault.problem == problem);
  CHECK(fault.hint == hint);
  CHECK(fault.key == "procedure[" + std::to_string(step) + "]");
}

std::vector<MoveKind> kinds(const std::vector<Move>& moves) {
  std::vector<MoveKind> out;
  for (const Move& move : moves) out.push_back(move.kind);
  return out;
}

}  // namespace

TEST_CASE("procedure: the sample rolls, drags, hangs, folds, lifts and is parked", "[mechanism]") {
  const Model model = build_model(sample_scene());
  CHECK(kinds(model.moves) == std::vector<MoveKind>{MoveKind::roll, MoveKind::drag, MoveKind::hang, MoveKind::fold,
                                                    MoveKind::lift, MoveKind::park});
  CHECK(model.moves[0].state == ZoneState::standing);
  CHECK_FALSE(model.moves[0].hooked_on);
  CHECK(model.moves[0].pinned == std::vector<bool>{true});
  for (std::size_t i = 1; i < 5; ++i) {
    CHECK(model.moves[i].state == ZoneState::moving);
    CHECK(model.moves[i].hooked_on);
    CHECK(model.moves[i].pinned == std::vector<bool>{false});
  }
  CHECK(model.moves[5].state == ZoneState::parked);
  CHECK(model.moves[5].index == 7);
}

TEST_CASE("procedure: every segment begins where the one before ends", "[mechanism]") {
  const Model model = build_model(sample_scene());
  Configuration now = model.moves[1].segments.front().from;
  CHECK(now.lean == model.working_lean);
  for (std::size_t i = 1; i < model.moves.size(); ++i) {
    for (const Segment& segment : model.moves[i].segments) {
      CHECK(segment.from.lean == now.lean);
      CHECK(segment.from.folds == now.folds);
      CHECK(segment.from.station == now.station);
      now = segment.to;
    }
  }
  CHECK(now.lean == 88 * kDegree);
  CHECK(now.folds[0] == 176 * kDegree);
  CHECK(now.station == 4.0);
}

TEST_CASE("procedure: a standing roll means the whole span and every lean of the floor", "[mechanism]") {
  Scene scene = sample_scene();
  scene.procedure.insert(scene.procedure.begin(), roll_to(2.0));
  const Model model = build_model(scene);
  const Segment& first = model.moves[0].segments[0];
  CHECK(first.stations == model.span);
  // As steep as the same foot under the highest pivot that the hooks' play allows: r (1 - cos 30) above the nominal one.
  const double rise = model.hook_slack * (1.0 - std::cos(model.seat_range));
  const double height = norm(model.axle) * std::cos(model.working_leans.lo + std::atan2(model.axle.y, model.axle.x));
  CHECK(first.from.lean == Approx(lean_for(model.axle, height + rise)).margin(1e-12));
  CHECK(first.to.lean == model.working_leans.hi);
  CHECK(first.from.station == 4.0);
  CHECK(first.to.station == 2.0);
  CHECK(model.moves[1].segments[0].from.station == 2.0);
}

TEST_CASE("procedure: without a standing roll, move 0 stands for the standing stair", "[mechanism]") {
  const Model model = build_model(without(sample_scene(), kRoll));
  CHECK(model.moves[0].kind == MoveKind::stand);
  CHECK(model.moves[0].index == 0);
  CHECK(model.moves[0].state == ZoneState::standing);
  CHECK(model.moves[0].pinned == std::vector<bool>{true});
  CHECK(model.moves[0].segments[0].stations == model.span);
}

TEST_CASE("procedure: an empty one only stands, in the span's middle where there is no home", "[mechanism]") {
  Scene scene = sample_scene();
  scene.procedure.clear();
  scene.hoist.reset();
  const Model model = build_model(scene);
  REQUIRE(model.moves.size() == 1);
  CHECK(model.moves[0].kind == MoveKind::stand);
  CHECK(model.moves[0].segments[0].from.station == model.span.middle());
}

TEST_CASE("procedure: a stair of one section is lifted on its line", "[mechanism]") {
  const Model model = build_model(one_section_scene());
  CHECK(kinds(model.moves) == std::vector<MoveKind>{MoveKind::roll, MoveKind::lift, MoveKind::park});
}

TEST_CASE("procedure: a rolling hoist rolls the raised stair and parks it at every station", "[mechanism]") {
  Scene scene = then(rolling(sample_scene()), roll_to(2.0));
  const Model model = build_model(scene);
  const Move& raised = model.moves[model.moves.size() - 2];
  CHECK(raised.kind == MoveKind::roll);
  CHECK(raised.state == ZoneState::moving);
  CHECK(raised.segments[0].stations == model.span);
  CHECK(raised.segments[0].from.lean == raised.segments[0].to.lean);
  CHECK(model.moves.back().segments[0].stations == model.span);
  CHECK(model.moves.back().segments[0].from.station == 2.0);
}

TEST_CASE("procedure: together moves lean, fold and, where the hoist rolls, station", "[mechanism]") {
  Step both = to_lean(StepKind::together, 85);
  both.folds = {170 * kDegree};
  both.station = 3.0;
  check_refused(then(sample_scene(), both), 7,
                "the hoist does not roll, so the stair cannot change its station while it moves",
                "leave `station` out, or write `rolls: yes` under `hoist`");
  const Model model = build_model(then(rolling(sample_scene()), both));
  const Segment& segment = model.moves[model.moves.size() - 2].segments[0];
  CHECK(segment.to.lean == 85 * kDegree);
  CHECK(segment.to.folds[0] == 170 * kDegree);
  CHECK(segment.to.station == 3.0);
  CHECK_FALSE(segment.over_stations());
}

TEST_CASE("procedure: steps out of order are refused at their place, with what to write", "[mechanism]") {
  check_refused(without(sample_scene(), kHookOn), 2, "a drag before the hoist line is on",
                "write `hook on: hoist` before it");
  check_refused(without(sample_scene(), kUnpin), 2,
                "the foot can drag or hang only below a single unpinned hinge, but 0 are unpinned",
                "write `unpin: 1` before it");
  check_refused(without(without(without(sample_scene(), kHang), kDrag), kUnpin), 2, "hinge 1 is pinned and cannot fold",
                "write `unpin: 1` before it");
  check_refused(then(sample_scene(), step(StepKind::hook_on)), 7, "the hoist line is on already", "");
  check_refused(then(sample_scene(), hinge_step(StepKind::unpin, 1)), 7, "hinge 1 is unpinned already", "");
  check_refused(then(sample_scene(), hinge_step(StepKind::unpin, 2)), 7, "there is no hinge 2", "");
  check_refused(then(sample_scene(), hinge_step(StepKind::pin, 1)), 7, "hinge 1 is folded 176.0° and cannot be pinned",
                "fold it to 0 first");
  check_refused(then(sample_scene(), fold_to(179)), 7, "a fold of 179.0° is more than hinge 1 allows, 178.0°", "");
  check_refused(then(sample_scene(), roll_to(2.0)), 7,
                "the stair cannot roll on the hoist line, which hangs from a fixed point",
                "write `hook off: hoist` before it, or `rolls: yes` under `hoist`");
  check_refused(then(sample_scene(), to_lean(StepKind::hang, 80)), 7,
                "a hang raises the stair, but it leans 88.0° already", "give a greater lean, or `lift` to lower it");
  check_refused(then(sample_scene(), to_lean(StepKind::drag, 89)), 7, "the casters are off the floor already",
                "write `hang` instead");
}

TEST_CASE("procedure: the step's own place in the file is the error's", "[mechanism]") {
  Scene scene = without(sample_scene(), kUnpin);  // the drag keeps its place on line 103
  CHECK(testing::fault_of([&] { build_model(scene); }).at.line == 103);
  scene.procedure[2].at = {};
  CHECK(testing::fault_of([&] { build_model(scene); }).at.line == 99);  // the list's
}

TEST_CASE("procedure: the standing stair rolls only pinned, off the line and within its reach", "[mechanism]") {
  Scene scene = without(sample_scene(), kHookOn);
  std::swap(scene.procedure[0], scene.procedure[1]);
  check_refused(scene, 1, "the standing stair would buckle at hinge 1, which is unpinned", "write `pin: 1` before it");
  scene = sample_scene();
  scene.procedure[0] = roll_to(7.1);
  check_refused(scene, 0, "station 7.100 m is out of the stair's reach",
                "its hooks keep it between stations 487 mm and 7.013 m");
}

TEST_CASE("procedure: the line goes on at home, where there is a hoist", "[mechanism]") {
  Scene scene = sample_scene();
  scene.procedure[0] = roll_to(3.0);
  check_refused(scene, 1, "the stair is at station 3.000 m, the hoist's home at 4.000 m",
                "write `roll: home` before it");
  scene = sample_scene();
  scene.hoist.reset();
  check_refused(scene, 0, "there is no home station", "give `hoist.home`, or write the station");
  check_refused(without(scene, kRoll), 0, "there is no hoist to hook on", "describe it under `hoist`");
}

TEST_CASE("procedure: raised off the line, the stair cannot roll", "[mechanism]") {
  Scene scene = then(then(sample_scene(), step(StepKind::hook_off)), roll_to(3.0));
  check_refused(scene, 8, "the stair is off the floor, and the hoist does not roll",
                "roll before lifting, or write `rolls: yes` under `hoist`");
  check_refused(then(then(sample_scene(), step(StepKind::hook_off)), step(StepKind::hook_off)), 8,
                "the hoist line is off already", "");
}

// With the hinge on the front face a rising joint pulls the back faces apart, which the butted ends and the scabs
// forbid.
TEST_CASE("procedure: a front hinge cannot drag", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.hinges[0].face = HingeFace::front;
  const Diagnostic fault = testing::fault_of([&] { build_model(scene); });
  CHECK(fault.problem.find("hinge 1 would have to open the other way by ") == 0);
  CHECK(fault.key == "procedure[3]");
}

TEST_CASE("procedure: pinned again when straight, the stair may come down and roll", "[mechanism]") {
  const Model parked = build_model(sample_scene());
  Scene scene = sample_scene();
  scene.procedure.resize(kUnpin);
  scene.procedure.push_back(to_lean(StepKind::lift, 60));
  scene.procedure.push_back(hinge_step(StepKind::unpin, 1));
  scene.procedure.push_back(fold_to(90));
  scene.procedure.push_back(fold_to(0));
  scene.procedure.push_back(hinge_step(StepKind::pin, 1));
  scene.procedure.push_back(to_lean(StepKind::lift, parked.working_lean / kDegree));
  scene.procedure.push_back(step(StepKind::hook_off));
  scene.procedure.push_back(roll_to(2.0));
  const Model model = build_model(scene);
  const Move& roll = model.moves[model.moves.size() - 2];
  CHECK(roll.kind == MoveKind::roll);
  CHECK(roll.state == ZoneState::standing);
  CHECK(roll.pinned == std::vector<bool>{true});
}
