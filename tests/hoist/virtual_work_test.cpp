#include "sim/hoist/virtual_work.h"

#include <catch2/catch.hpp>

#include <cmath>

#include "tests/support/random_rig.h"

using namespace stowpath;

namespace {

enum class Setting { lifted, folding, dragged };

struct Twice {
  Reactions statics, work;
};

StaticsProblem bare_problem(const testing::RandomRig& rig) {
  StaticsProblem problem{rig.linkage, rig.pose, rig.masses, {}, {}, {}, {}, {}, kGravity};
  problem.hinges.assign(static_cast<std::size_t>(rig.linkage.sections - 1), HingeHold::held);
  return problem;
}

void add_friction(std::mt19937& random, StaticsProblem& problem) {
  for (double& radius : problem.joint_drag) radius = testing::draw(random, -0.012, 0.012);
  if (problem.floor) problem.floor->friction = testing::draw(random, -0.4, 0.4);
}

Twice solve_twice(std::mt19937& random, const testing::RandomRig& rig, Setting setting) {
  StaticsProblem problem = bare_problem(rig);
  const Haul haul = random() % 2 == 0 ? Haul::raising : Haul::lowering;
  std::vector<WorkingRope> ropes{{rig.line, tension_shares(rig.line, haul)}};
  if (setting != Setting::lifted) problem.hinges.back() = HingeHold::free;
  if (setting == Setting::folding) ropes.push_back({*rig.fold_line, tension_shares(*rig.fold_line, haul)});
  if (setting == Setting::dragged) problem.floor = FloorContact{rig.axle, 0.0375, 0.0};
  if (setting == Setting::lifted && rig.linkage.sections > 1 && random() % 2 == 0)
    problem.hinges.back() = HingeHold::hangs;
  add_friction(random, problem);
  for (const WorkingRope& rope : ropes)
    problem.lines.push_back(line_load(rope.rigging, rope_segments(rope.rigging, rig.linkage, rig.pose), rope.shares));
  return {solve_statics(problem), virtual_work(problem, ropes)};
}

// Near a dead centre the pull is a difference of large numbers over a small lever: such rigs are passed over.
bool well_set(const Twice& twice, const testing::RandomRig& rig) {
  double weight = 0.0;
  for (const SectionMass& mass : rig.masses) weight += kGravity * mass.mass;
  if (!twice.statics.solvable || !twice.work.solvable) return false;
  for (const double tension : twice.statics.tension)
    if (std::abs(tension) > 20.0 * weight || std::abs(tension) < 1e-3 * weight) return false;
  return norm(twice.statics.hook) < 20.0 * weight;
}

}  // namespace

TEST_CASE("virtual work: the pull is that of direct statics on random rigs", "[hoist]") {
  std::mt19937 random(1717);
  int compared[3] = {0, 0, 0};
  while (compared[0] + compared[1] + compared[2] < 3000) {
    const testing::RandomRig rig = testing::random_rig(random);
    const auto setting = static_cast<Setting>(random() % 3);
    if (setting != Setting::lifted && rig.linkage.sections == 1) continue;
    const Twice twice = solve_twice(random, rig, setting);
    if (!well_set(twice, rig)) continue;
    ++compared[static_cast<int>(setting)];
    for (std::size_t i = 0; i < twice.statics.tension.size(); ++i)
      CHECK(twice.work.tension[i] == Approx(twice.statics.tension[i]).epsilon(1e-9));  // the issue's own bound
    CHECK(norm(twice.work.hook - twice.statics.hook) <= 1e-9 * (1.0 + norm(twice.statics.hook)));
    CHECK(norm(twice.work.floor - twice.statics.floor) <= 1e-8 * (1.0 + norm(twice.statics.floor)));
    CHECK(twice.work.hinge_moment[0] == Approx(twice.statics.hinge_moment[0]).epsilon(1e-8).margin(1e-6));
  }
  for (const int count : compared) CHECK(count > 500);  // each way of being held was met
}

// Work at a pose: the hand's, less what the sheaves, joints and the floor take, is what the stair gains.
TEST_CASE("virtual work: along a real motion the hand's work is gain and losses", "[hoist]") {
  std::mt19937 random(2929);
  int compared = 0;
  while (compared < 1000) {
    const testing::RandomRig rig = testing::random_rig(random);
    StaticsProblem problem = bare_problem(rig);
    LeanRates rates{};  // rigid: all sections turn as one
    for (int j = 0; j < rig.linkage.sections; ++j) rates[static_cast<std::size_t>(j)] = 1.0;
    const WorkingRope rope{rig.line, tension_shares(rig.line, Haul::raising)};
    problem.joint_drag[0] = 0.008;
    problem.lines = {line_load(rig.line, rope_segments(rig.line, rig.linkage, rig.pose), rope.shares)};
    const Reactions found = solve_statics(problem);
    const double line_rate = rope_work_rate(rope, rig.linkage, rig.pose, rates);
    if (!found.solvable || std::abs(line_rate) < 0.05) continue;
    ++compared;
    const double gain = energy_rate(rig.linkage, rig.pose, rig.masses, rates);
    CHECK(found.tension[0] == Approx((gain + found.drag[0]) / line_rate).epsilon(1e-9));
  }
}

TEST_CASE("virtual work: rates of energy and rope are those of small turns", "[hoist]") {
  std::mt19937 random(3131);
  for (int n = 0; n < 300; ++n) {
    const testing::RandomRig rig = testing::random_rig(random);
    const double h = 1e-5;  // central difference: error h^2 = 1e-10 and rounding 1e-11
    const auto turned = [&](double by) {
      Configuration pose = rig.pose;
      pose.lean += by * rig.rates[0];
      for (std::size_t k = 0; k + 1 < static_cast<std::size_t>(rig.linkage.sections); ++k)
        pose.folds[k] += by * rig.linkage.fold_sign[k] * (rig.rates[k + 1] - rig.rates[k]);
      return pose;
    };
    const double dE =
        (potential_energy(rig.linkage, turned(h), rig.masses) - potential_energy(rig.linkage, turned(-h), rig.masses)) /
        (2.0 * h);
    CHECK(energy_rate(rig.linkage, rig.pose, rig.masses, rig.rates) == Approx(dE).epsilon(1e-7).margin(1e-5));
    const double dL =
        (rope_length(rig.line, rig.linkage, turned(h)) - rope_length(rig.line, rig.linkage, turned(-h))) / (2.0 * h);
    const WorkingRope ideal{rig.line, tension_shares(rig.line, Haul::holding)};
    CHECK(rope_work_rate(ideal, rig.linkage, rig.pose, rig.rates) == Approx(-dL).epsilon(1e-7).margin(1e-6));
  }
}
