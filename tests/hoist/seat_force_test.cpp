#include "sim/hoist/seat_force.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "tests/support/gallery.h"
#include "tests/support/random_rig.h"

using namespace stowpath;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr Interval kArc{0.0, 195.0 * kDegree};

// A level bar of 2 m and 100 N, held at its end by a line of one part that rises at `slope` degrees from level,
// outward.
struct LevelBar {
  Move move;
  LiftRig rig;

  explicit LevelBar(double slope) {
    move.kind = MoveKind::lift;
    move.hooked_on = true;
    Segment segment;
    segment.from.lean = segment.to.lean = 90.0 * kDegree;
    move.segments = {segment};
    rig.linkage = {{0.0, 0.0}, 1, {2.0}, {}, {}};
    rig.masses = {{100.0 / kGravity, {1.0, 0.0}, 0.0}};
    const Vec2 ceiling{2.0 + std::cos(slope * kDegree), std::sin(slope * kDegree)};
    rig.line.points = {{0, {2.0, 0.0}, 0.0, false, false, "pick"},
                       {-1, ceiling, 0.0, false, true, "ceiling point"},
                       {-1, ceiling - Vec2{0.0, 1.0}, 0.0, false, false, "hand"}};
    rig.line.K = 1.09;
  }

  HookContact contact(const HookCone& cone) const {
    return hauled_contact(rig, {move, move.segments[0], 0.5}, cone, kArc);
  }
};

}  // namespace

TEST_CASE("seat: under a plumb load the pipe bears at 90 degrees less the lean", "[hoist]") {
  for (double lean = 0.0; lean < 130.0; lean += 3.7)
    CHECK(bend_angle({0.0, 250.0}, lean * kDegree, kArc) == Approx((90.0 - lean) * kDegree).margin(1e-14));
}

TEST_CASE("seat: an angle in the hook's mouth is told from the side that it is nearer to", "[hoist]") {
  // The mouth of 195 degrees of arc runs from 195 to 360; its middle is 277.5.
  CHECK(bend_angle({0.0, -1.0}, 0.0, kArc) == Approx(270.0 * kDegree));
  CHECK(bend_angle({0.0, -1.0}, -10.0 * kDegree, kArc) == Approx(-80.0 * kDegree));
}

// Moments about the pipe: the line's upright part is half the weight, its part along the bar that over the slope.
TEST_CASE("seat: an inclined line, by the triangle of forces", "[hoist]") {
  for (const double slope : {90.0, 60.0, 45.0, 30.0, 135.0}) {
    const HookContact contact = LevelBar(slope).contact({});
    REQUIRE(contact.judged);
    const double along = 50.0 / std::tan(slope * kDegree);  // outward pull of the line; the pipe holds against it
    CHECK(contact.points.lo == Approx(std::atan2(50.0, -along) - 90.0 * kDegree).margin(1e-12));
    CHECK(contact.points.length() == Approx(0.0).margin(1e-12));  // one part: no sheave's friction turns its pull
    CHECK(contact.force.hi == Approx(std::hypot(50.0, along)).epsilon(1e-12));
  }
}

TEST_CASE("seat: friction of the hook widens the contact by its angle, within the arc", "[hoist]") {
  const HookCone cone = hook_cone({{0.15, 0.5}, {0.1, 0.3}, {0.3, 0.7}});
  CHECK(cone.most == Approx(std::atan(0.5)));
  const HookContact out = LevelBar(45.0).contact(cone);  // the force points at 45 degrees of the bend
  CHECK(out.touches.lo == Approx(45.0 * kDegree - cone.most).margin(1e-12));
  CHECK(out.touches.hi == Approx(45.0 * kDegree + cone.most).margin(1e-12));
  CHECK(out.held);
  const HookContact plumb = LevelBar(90.0).contact(cone);  // at 0: on from the shank, no arc before it
  CHECK(plumb.touches.lo == 0.0);
  CHECK(plumb.held);
  // Drawn to the wall: held while the force lies within the least friction of the shank, atan(0.15) = 8.5 degrees.
  CHECK(LevelBar(98.0).contact(cone).held);
  CHECK_FALSE(LevelBar(99.0).contact(cone).held);
}

TEST_CASE("seat: a line that pulls too near the pipe lifts the hooks", "[hoist]") {
  LevelBar bar(90.0);
  bar.rig.line.points[0].at = {0.8, 0.0};  // inside of the centre of mass: the pull is 125 N, the pipe holds down 25 N
  bar.rig.line.points[1].at = {0.8, 1.0};
  bar.rig.line.points[2].at = {0.8, 0.0};
  const HookContact contact = bar.contact({});
  CHECK(contact.lifted);
  CHECK(contact.points.lo == Approx(180.0 * kDegree).margin(1e-12));
  CHECK(contact.force.hi == Approx(25.0).epsilon(1e-12));
  CHECK(contact.held);  // the curl is below the pipe now
  CHECK_FALSE(hauled_contact(bar.rig, {bar.move, bar.move.segments[0], 0.5}, {}, {0.0, 150.0 * kDegree}).held);
}

TEST_CASE("seat: the standing stair's three forces meet in one point", "[hoist]") {
  std::mt19937 random(12);
  for (int n = 0; n < 500; ++n) {
    using testing::draw;
    const StandingBalance b{draw(random, 50, 500), draw(random, 0.2, 0.9), draw(random, 1.0, 2.0),
                            draw(random, 1.5, 3)};
    const double k = draw(random, -0.25, 0.7);
    const Vec2 pipe = standing_hook_force(b, k);
    const double normal = b.weight - pipe.y;
    CHECK(pipe.x == Approx(-k * normal).margin(1e-9 * b.weight));
    // The floor's line through (foot, -height) along (k, 1), where it is plumb under or over the centre of mass.
    const double meet = std::abs(k) < 1e-6 ? 0.0 : -b.height + (b.centre - b.foot) / k;
    if (std::abs(k) > 0.01)
      CHECK(cross({b.centre, meet}, pipe) == Approx(0.0).margin(1e-8 * b.weight * std::abs(meet)));
  }
}

TEST_CASE("seat: standing, the floor's friction gives the range worked out by hand", "[hoist]") {
  const StandingBalance b{100.0, 0.5, 1.0, 2.0};
  // k = 0.25: normal 50 / 1.5 = 33.3 N, pipe (-8.33, 66.7) N; k = -0.1: normal 62.5 N, pipe (6.25, 37.5) N.
  const double lean = 27.0 * kDegree;
  const HookContact some = standing_contact(b, lean, 0.25, {0.1, 0.2}, kArc);
  CHECK(some.points.hi == Approx(std::atan2(66.0 + 2.0 / 3.0, -25.0 / 3.0) - lean).margin(1e-12));
  const HookContact little = standing_contact(b, lean, 0.1, {0.1, 0.2}, kArc);
  CHECK(little.points.lo == Approx(std::atan2(37.5, 6.25) - lean).margin(1e-12));
  CHECK(little.touches.lo == Approx(little.points.lo - 0.2).margin(1e-12));
  // Pushed in hard, the stair leans with its shanks on the pipe: the force comes to the shank's own cone and no
  // further.
  const HookContact much = standing_contact(b, lean, 0.7, {0.1, 0.2}, kArc);
  CHECK(much.points.lo == Approx(-0.2).margin(1e-12));
  CHECK(much.touches.lo == 0.0);
  CHECK(much.held);
}

// The statics' second opinion: the direction of the pipe's force by virtual work.
TEST_CASE("seat: virtual work puts the contact at the same angle", "[hoist]") {
  std::mt19937 random(55);
  int compared = 0;
  while (compared < 500) {
    const testing::RandomRig rig = testing::random_rig(random);
    StaticsProblem problem{rig.linkage, rig.pose, rig.masses, {}, {}, {}, {}, {}, kGravity};
    problem.hinges.assign(static_cast<std::size_t>(rig.linkage.sections - 1), HingeHold::held);
    const WorkingRope rope{rig.line, tension_shares(rig.line, Haul::raising)};
    problem.lines = {line_load(rig.line, rope_segments(rig.line, rig.linkage, rig.pose), rope.shares)};
    const Reactions statics = solve_statics(problem), work = virtual_work(problem, {&rope, 1});
    if (!statics.solvable || !work.solvable || norm(statics.hook) < 1.0 || norm(statics.hook) > 1e5) continue;
    ++compared;
    const double lean = rig.pose.lean;
    const double apart = bend_angle(statics.hook, lean, kArc) - bend_angle(work.hook, lean, kArc);
    CHECK(std::abs(std::sin(0.5 * apart)) < 1e-6);
  }
}
