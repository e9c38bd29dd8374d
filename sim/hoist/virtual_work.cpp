#include "sim/hoist/virtual_work.h"

#include <algorithm>
#include <cmath>

#include "sim/hoist/small_solve.h"

namespace stowpath {

namespace {

constexpr double kSettled = 1e-12;
constexpr int kMaxRounds = 200;

std::size_t index(int j) { return static_cast<std::size_t>(j); }

LeanRates turning_alone(int section) {
  LeanRates rates{};
  rates[index(section)] = 1.0;
  return rates;
}

/// One equation for each section that turns alone.
class VirtualTurns {
 public:
  VirtualTurns(const StaticsProblem& problem, std::span<const WorkingRope> ropes)
      : problem_(problem), ropes_(ropes), X_W_(place_sections(problem.linkage, problem.pose)) {}

  Reactions solve() const;

 private:
  int sections() const { return problem_.linkage.sections; }
  std::size_t unknowns() const;
  SmallSystem frictionless() const;
  double given_work(const LeanRates& rates) const;
  double floor_work(const LeanRates& rates) const;
  void fill_row(SmallSystem& system, int section) const;
  double drag_work(const std::array<double, kMaxSections>& drag, int section) const;
  Reactions read(const std::vector<double>& x) const;
  Vec2 force_below(const Reactions& found, int section) const;
  Vec2 rope_force(const WorkingRope& rope, int section) const;

  const StaticsProblem& problem_;
  std::span<const WorkingRope> ropes_;
  SectionPoses X_W_;
};

std::size_t VirtualTurns::unknowns() const {
  const auto& hinges = problem_.hinges;
  const auto moments =
      std::count_if(hinges.begin(), hinges.end(), [](HingeHold hold) { return hold != HingeHold::free; });
  return static_cast<std::size_t>(moments) + ropes_.size() + (problem_.floor ? std::size_t{1} : std::size_t{0});
}

double VirtualTurns::given_work(const LeanRates& rates) const {
  double work = -energy_rate(problem_.linkage, problem_.pose, problem_.masses, rates, problem_.gravity);
  for (const SectionLoad& load : problem_.given)
    work += dot(load.force, point_velocity(problem_.linkage, X_W_, rates, load.section, load.at));
  return work;
}

// The contact is a point of the last section just now; its velocity is the axle's and that section's turn.
double VirtualTurns::floor_work(const LeanRates& rates) const {
  const int last = sections() - 1;
  const Vec2 axle = point_velocity(problem_.linkage, X_W_, rates, last, problem_.floor->axle);
  return problem_.floor->friction * (axle.x + rates[index(last)] * problem_.floor->below) + axle.y;
}

void VirtualTurns::fill_row(SmallSystem& system, int section) const {
  const LeanRates rates = turning_alone(section);
  const std::size_t row = index(section);
  std::size_t column = 0;
  for (std::size_t k = 0; k < problem_.hinges.size(); ++k) {
    if (problem_.hinges[k] == HingeHold::free) continue;
    const double above = problem_.hinges[k] == HingeHold::held ? rates[k] : 0.0;
    system.at(row, column++) = rates[k + 1] - above;
  }
  for (const WorkingRope& rope : ropes_)
    system.at(row, column++) = rope_work_rate(rope, problem_.linkage, problem_.pose, rates);
  if (problem_.floor) system.at(row, column) = floor_work(rates);
  system.b[row] = -given_work(rates);
}

SmallSystem VirtualTurns::frictionless() const {
  SmallSystem system(unknowns());
  for (int j = 0; j < sections(); ++j) fill_row(system, j);
  return system;
}

double VirtualTurns::drag_work(const std::array<double, kMaxSections>& drag, int section) const {
  const LeanRates rates = turning_alone(section);
  double work = 0.0;
  for (int j = 0; j < sections(); ++j) {
    const double turning = rates[index(j)] - (j > 0 ? rates[index(j - 1)] : 0.0);
    work -= std::copysign(drag[index(j)], problem_.joint_drag[index(j)]) * turning;
  }
  return work;
}

Vec2 VirtualTurns::rope_force(const WorkingRope& rope, int section) const {
  const auto segments = rope_segments(rope.rigging, problem_.linkage, problem_.pose);
  const auto forces = point_forces(rope.rigging, segments, rope.shares);
  Vec2 sum;
  for (std::size_t i = 0; i < forces.size(); ++i)
    if (rope.rigging.points[i].section >= section) sum = sum + forces[i].side;
  return sum;
}

// All that acts on the sections from `section` on, the joint above them left out.
Vec2 VirtualTurns::force_below(const Reactions& found, int section) const {
  Vec2 sum = found.floor;
  for (int j = section; j < sections(); ++j) sum.y -= problem_.gravity * problem_.masses[index(j)].mass;
  for (const SectionLoad& load : problem_.given)
    if (load.section >= section) sum = sum + load.force;
  for (std::size_t i = 0; i < ropes_.size(); ++i) sum = sum + found.tension[i] * rope_force(ropes_[i], section);
  return sum;
}

Reactions VirtualTurns::read(const std::vector<double>& x) const {
  Reactions found;
  std::size_t column = 0;
  for (std::size_t k = 0; k < problem_.hinges.size(); ++k)
    if (problem_.hinges[k] != HingeHold::free) found.hinge_moment[k] = x[column++];
  for (std::size_t i = 0; i < ropes_.size(); ++i) found.tension.push_back(x[column++]);
  if (problem_.floor) found.floor = x[column] * Vec2{problem_.floor->friction, 1.0};
  found.hook = -force_below(found, 0);
  found.drag[0] = std::abs(problem_.joint_drag[0]) * norm(found.hook);
  for (int j = 1; j < sections(); ++j) {
    found.hinge[index(j - 1)] = -force_below(found, j);
    found.drag[index(j)] = std::abs(problem_.joint_drag[index(j)]) * norm(found.hinge[index(j - 1)]);
  }
  return found;
}

Reactions VirtualTurns::solve() const {
  if (unknowns() != index(sections())) return {};
  const SmallSystem bare = frictionless();
  std::array<double, kMaxSections> drag{};
  for (int round = 0; round < kMaxRounds; ++round) {
    SmallSystem system = bare;
    for (int j = 0; j < sections(); ++j) system.b[index(j)] -= drag_work(drag, j);
    const auto x = solve_small(system);
    if (!x) return {};
    Reactions found = read(*x);
    double change = 0.0, size = 0.0;
    for (std::size_t j = 0; j < drag.size(); ++j) {
      change = std::max(change, std::abs(found.drag[j] - drag[j]));
      size = std::max(size, found.drag[j]);
    }
    drag = found.drag;
    if (change > kSettled * size) continue;
    found.solvable = true;
    found.residual = residual_of(system, *x);
    return found;
  }
  return {};
}

}  // namespace

double energy_rate(const Linkage& linkage, const Configuration& pose, std::span<const SectionMass> masses,
                   const LeanRates& rates, double gravity) {
  const SectionPoses X_W = place_sections(linkage, pose);
  double rate = 0.0;
  for (int j = 0; j < linkage.sections; ++j)
    rate += gravity * masses[index(j)].mass * point_velocity(linkage, X_W, rates, j, masses[index(j)].centre).y;
  return rate;
}

double potential_energy(const Linkage& linkage, const Configuration& pose, std::span<const SectionMass> masses,
                        double gravity) {
  const SectionPoses X_W = place_sections(linkage, pose);
  double energy = 0.0;
  for (int j = 0; j < linkage.sections; ++j) {
    const Vec2 centre = X_W[index(j)] * masses[index(j)].centre;
    energy += gravity * masses[index(j)].mass * (centre.y - linkage.pivot.y);
  }
  return energy;
}

double rope_work_rate(const WorkingRope& rope, const Linkage& linkage, const Configuration& pose,
                      const LeanRates& rates) {
  const auto growth = segment_rates(rope.rigging, linkage, pose, rates);
  double work = 0.0;
  for (std::size_t i = 0; i < growth.size(); ++i) work -= rope.shares[i] * growth[i];
  return work;
}

Reactions virtual_work(const StaticsProblem& problem, std::span<const WorkingRope> ropes) {
  return VirtualTurns(problem, ropes).solve();
}

}  // namespace stowpath
