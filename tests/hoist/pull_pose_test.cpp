#include "sim/hoist/pull_pose.h"

#include <catch2/catch.hpp>

#include <cmath>

#include "tests/support/random_rig.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

// The sample stair with another joint, masses, pick and ceiling point: still dragged, hung and folded by its procedure.
Scene random_scene(std::mt19937& random) {
  Scene scene = testing::sample_scene();
  const double upper = testing::draw(random, 1.70, 1.90);
  scene.stair.sections = {upper, 3.23 - upper};
  scene.stair.casters.along = scene.stair.sections[1] + 0.06;
  scene.stair.hinges[0].offset = testing::draw(random, 0.005, 0.030);
  scene.stair.extras.clear();
  scene.stair.treads.reset();
  scene.hoist->ceiling_point = RoomPoint{{testing::draw(random, 2.2, 3.2), testing::draw(random, 4.05, 4.1)}, 4.000};
  scene.hoist->pick = {1, upper - testing::draw(random, 0.02, 0.30), testing::draw(random, -0.05, 0.05)};
  scene.hoist->line.parts = 1 + static_cast<int>(random() % 6);
  scene.fold_line.reset();
  return scene;
}

struct Compared {
  int drags = 0, hangs = 0, lifts = 0;
};

// T = (dE/du + what friction takes) / (work of 1 N at the hand, sheaves' part taken off).
void compare(const LiftRig& rig, const PosePlace& place, Compared& compared) {
  const double hauling = hauling_rate(rig, place);
  const PosePull raising = pose_pull(rig, place, Haul::raising), holding = pose_pull(rig, place, Haul::holding);
  if (hauling <= 0.01 || !raising.reactions.solvable || !holding.reactions.solvable || raising.turned_hinge >= 0)
    return;
  const Configuration pose = at(rig.linkage, place.segment, place.u);
  const LeanRates rates = rates_at(rig, place);
  const double gain = energy_rate(rig.linkage, pose, rig.masses, rates);
  // Where a foot nears full stretch gain and hauling are differences of large terms: compare on their scale.
  const double size = std::abs(gain) + std::abs(rates[1]) * 10.0;
  CHECK(std::abs(holding.hand * hauling - gain) <= 1e-9 * size);
  const PoseWork work = pose_work(rig, place, true);
  const double lost = work.hook + work.hinges + work.floor;
  const double line = rope_work_rate({rig.line, raising.shares}, rig.linkage, pose, rates);
  CHECK(std::abs(raising.hand - (gain + lost) / line) <= 1e-9 * (std::abs(raising.hand) + size / line));
  CHECK(work.hook >= 0.0);
  CHECK(work.hinges >= 0.0);
  CHECK(work.floor >= 0.0);
  ++(place.segment.kind == SegmentKind::drag ? compared.drags
     : place.move.kind == MoveKind::hang     ? compared.hangs
                                             : compared.lifts);
}

}  // namespace

TEST_CASE("pull pose: along drags, hangs and lifts the pull is that of virtual work on the path", "[hoist]") {
  std::mt19937 random(5151);
  Compared compared;
  for (int n = 0; n < 120; ++n) {
    const Scene scene = random_scene(random);
    const Model model = build_model(scene);
    const LiftRig rig = lift_rig(scene, model, FrictionEnd::least, 0.005);
    for (const Move& move : model.moves)
      for (const Segment& segment : move.segments)
        for (int i = 0; move.hooked_on && i < 6; ++i)
          compare(rig, {move, segment, testing::draw(random, 0.01, 0.97)}, compared);
  }
  CHECK(compared.drags > 500);
  CHECK(compared.hangs > 500);
  CHECK(compared.lifts > 500);
}

TEST_CASE("pull pose: friction ends are the scene's own", "[hoist]") {
  Frictions ranges;
  ranges.hook = {0.1, 0.3};
  CHECK(choose_friction(ranges, FrictionEnd::least).hook == 0.1);
  CHECK(choose_friction(ranges, FrictionEnd::mean).hook == Approx(0.2));
  CHECK(choose_friction(ranges, FrictionEnd::most).hook == 0.3);
}

// sin(atan(mu)) times the radius: the friction circle of a dry journal.
TEST_CASE("pull pose: a level lift's drag is the friction circle of the hook's inside", "[hoist]") {
  const Scene scene = testing::one_section_scene();
  const Model model = build_model(scene);
  LiftRig rig = lift_rig(scene, model, FrictionEnd::mean, 0.005);
  Configuration from, to;
  from.station = to.station = 4.0;
  from.lean = 1.0;
  to.lean = 1.4;
  const Move move{1, MoveKind::lift, {{SegmentKind::straight, from, to, {}, {1.0, 0.0}}}, ZoneState::moving, true, {}};
  const PosePull pull = pose_pull(rig, {move, move.segments[0], 0.5}, Haul::raising);
  const double mu = rig.friction.hook, circle = scene.stair.hooks.inside * mu / std::hypot(1.0, mu);
  CHECK(pull.reactions.drag[0] == Approx(circle * norm(pull.reactions.hook)).epsilon(1e-12));
}
