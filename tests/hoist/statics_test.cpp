#include "sim/hoist/statics.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "sim/trade/measure.h"
#include "tests/support/random_rig.h"

using namespace stowpath;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

// A straight uniform stair of weight W [N] and length L [m], pitched `pitch` from the floor, hooked at its top.
struct PlainStair {
  Linkage linkage;
  std::vector<SectionMass> masses;
  Configuration pose;

  PlainStair(double weight, double length, double pitch) {
    linkage.pivot = {1.0, 3.0};
    linkage.length[0] = length;
    masses = {{weight / kGravity, {0.5 * length, 0.0}}};
    pose.lean = 0.5 * std::numbers::pi - pitch;
  }
  Vec2 along() const { return {std::sin(pose.lean), -std::cos(pose.lean)}; }
  StaticsProblem problem() const { return {linkage, pose, masses, {}, {}, {}, {}, {}, kGravity}; }
  Reactions pulled(Vec2 direction) const {
    StaticsProblem pulled = problem();
    pulled.lines = {{{{0, {linkage.length[0], 0.0}, direction}}}};
    return solve_statics(pulled);
  }
};

}  // namespace

// sources.md section 9, statics helpers (derived there): W 120 lb, 60 degrees.
TEST_CASE("statics: a stair on a rolling foot shares its weight between hook and floor", "[hoist][published]") {
  const PlainStair stair(120 * kPoundForce, 3.0, 60 * kDegree);
  StaticsProblem problem = stair.problem();
  problem.floor = FloorContact{{3.0, 0.0}, 0.0375, 0.0};
  const Reactions found = solve_statics(problem);
  REQUIRE(found.solvable);
  CHECK(found.floor.y / kPoundForce == Approx(60.0).epsilon(1e-12));  // rounding only
  CHECK(found.hook.y / kPoundForce == Approx(60.0).epsilon(1e-12));
  CHECK(found.hook.x == Approx(0.0).margin(1e-9));
}

// sources.md section 9: a plumb rope at the free end pulls W/2 at any angle, a square one (W/2) cos of the pitch.
TEST_CASE("statics: a rope at the free end pulls half the weight plumb, and a cosine of it square",
          "[hoist][published]") {
  for (const double pitch : {5.0, 30.0, 45.0, 60.0, 85.0}) {
    const PlainStair stair(120 * kPoundForce, 3.0, pitch * kDegree);
    const Vec2 along = stair.along();
    CHECK(stair.pulled({0.0, 1.0}).tension[0] / kPoundForce == Approx(60.0).epsilon(1e-12));
    CHECK(stair.pulled({-along.y, along.x}).tension[0] / kPoundForce ==
          Approx(60.0 * std::cos(pitch * kDegree)).epsilon(1e-12));
  }
  const PlainStair stair(120 * kPoundForce, 3.0, 60 * kDegree);
  CHECK(stair.pulled({-stair.along().y, stair.along().x}).tension[0] / kPoundForce == Approx(30.0).epsilon(1e-12));
}

// mechanics.md, Hoist: centre's radius over pick's radius, times weight.
TEST_CASE("statics: a plumb line pulls the same at every lean when pick, centre and pivot lie in line", "[hoist]") {
  for (int degrees = 2; degrees < 180; degrees += 4) {
    PlainStair stair(500.0, 3.0, 0.0);
    stair.pose.lean = degrees * kDegree;
    StaticsProblem problem = stair.problem();
    problem.lines = {{{{0, {2.4, 0.0}, {0.0, 1.0}}}}};
    CHECK(solve_statics(problem).tension[0] == Approx(500.0 * 1.5 / 2.4).epsilon(1e-10));  // small lever near plumb
  }
}

TEST_CASE("statics: a pinned joint passes the moment of what hangs below it", "[hoist]") {
  Linkage linkage;
  linkage.pivot = {1.0, 3.0};
  linkage.sections = 2;
  linkage.length = {2.0, 1.0, 0.0};
  linkage.fold_sign = {-1.0, 0.0};
  const std::vector<SectionMass> masses{{20.0, {1.0, 0.0}}, {10.0, {0.5, 0.0}}};
  Configuration level;
  level.lean = 90 * kDegree;
  StaticsProblem problem{linkage, level, masses, {HingeHold::held}, {}, {}, {}, {}, kGravity};
  problem.lines = {{{{0, {2.0, 0.0}, {0.0, 1.0}}}}};
  const Reactions found = solve_statics(problem);
  REQUIRE(found.solvable);
  CHECK(found.hinge_moment[0] == Approx(10.0 * kGravity * 0.5));  // rounding only, here and below
  CHECK(found.hinge[0].y == Approx(10.0 * kGravity));
  CHECK(found.tension[0] == Approx((20.0 * 1.0 + 10.0 * 2.5) * kGravity / 2.0));
}

// A load W held still on a lever against a friction circle: T a = W b + rho |R|, R = W - T, T > 0.
TEST_CASE("statics: drag at the pivot is its friction circle's radius times the hook's force", "[hoist]") {
  const PlainStair stair(500.0, 3.0, 0.0);
  StaticsProblem problem = stair.problem();
  problem.lines = {{{{0, {2.4, 0.0}, {0.0, 1.0}}}}};
  for (const double rho : {0.01, -0.01}) {
    problem.joint_drag[0] = rho;
    const Reactions found = solve_statics(problem);
    const double expected = 500.0 * (1.5 + rho) / (2.4 + rho);
    CHECK(found.tension[0] == Approx(expected).epsilon(1e-11));  // the rounds settle to 1e-12
    CHECK(found.drag[0] == Approx(0.01 * (500.0 - expected)).epsilon(1e-10));
  }
}

TEST_CASE("statics: what does not follow from the equations is said to be unsolvable", "[hoist]") {
  const PlainStair stair(500.0, 3.0, 60 * kDegree);
  CHECK_FALSE(solve_statics(stair.problem()).solvable);  // nothing holds it
  CHECK_FALSE(stair.pulled(stair.along()).solvable);     // the line runs through the pivot
}

// Equilibrium checked by hand on rigs drawn at random: outer forces of the whole chain cancel, moments about the room's
// origin too.
TEST_CASE("statics: all outer forces of a random rig cancel", "[hoist]") {
  std::mt19937 random(20260);
  for (int n = 0; n < 300; ++n) {
    const testing::RandomRig rig = testing::random_rig(random);
    StaticsProblem problem{rig.linkage, rig.pose, rig.masses, {}, {}, {}, {}, {}, kGravity};
    problem.hinges.assign(static_cast<std::size_t>(rig.linkage.sections - 1), HingeHold::held);
    const auto segments = rope_segments(rig.line, rig.linkage, rig.pose);
    problem.lines = {line_load(rig.line, segments, tension_shares(rig.line, Haul::raising))};
    const Reactions found = solve_statics(problem);
    if (!found.solvable) continue;
    const SectionPoses X_W = place_sections(rig.linkage, rig.pose);
    Vec2 force = found.hook;
    double moment = cross(rig.linkage.pivot, found.hook), size = 1.0;
    const auto add = [&](int section, Vec2 at, Vec2 f) {
      force = force + f;
      moment += cross(X_W[static_cast<std::size_t>(section)] * at, f);
      size += norm(f);
    };
    for (int j = 0; j < rig.linkage.sections; ++j) {
      const SectionMass& mass = rig.masses[static_cast<std::size_t>(j)];
      add(j, mass.centre, {0.0, -kGravity * mass.mass});
    }
    for (const SectionLoad& load : problem.lines[0].per_unit) add(load.section, load.at, found.tension[0] * load.force);
    CHECK(norm(force) <= 1e-10 * size);  // rounding of a dozen sums of this size
    CHECK(std::abs(moment) <= 1e-9 * size);
  }
}
