#include "sim/hoist/statics.h"

#include <algorithm>
#include <cmath>

#include "sim/hoist/small_solve.h"

namespace stowpath {

namespace {

constexpr double kSettled = 1e-12;  // of the greatest joint force
constexpr int kMaxRounds = 200;

std::size_t index(int j) { return static_cast<std::size_t>(j); }

/// Writes the equations: of section j, forces out in row 3j, up in 3j + 1, moments about its proximal joint in 3j + 2.
class Balance {
 public:
  explicit Balance(const StaticsProblem& problem)
      : problem_(problem), X_W_(place_sections(problem.linkage, problem.pose)), sections_(problem.linkage.sections) {}

  bool counts_match() const { return unknowns() == 3 * index(sections_); }
  double weight() const;
  Reactions solve() const;

 private:
  std::size_t unknowns() const;
  SmallSystem frictionless() const;
  void add_joints(SmallSystem& system) const;
  void add_moments(SmallSystem& system) const;
  void add_floor(SmallSystem& system, std::size_t column) const;
  void add_force(SmallSystem& system, const SectionLoad& load, std::size_t column) const;
  void load(SmallSystem& system, int section, Vec2 p_W, Vec2 force) const;
  void add_drag(SmallSystem& system, const std::array<double, kMaxSections>& size) const;
  Reactions read(const std::vector<double>& x) const;
  Vec2 proximal(int j) const { return X_W_[index(j)] * problem_.linkage.proximal(j); }
  std::size_t first_moment() const { return 2 * index(sections_); }
  std::size_t first_line() const;

  const StaticsProblem& problem_;
  SectionPoses X_W_;
  int sections_;
};

std::size_t Balance::first_line() const {
  const auto& hinges = problem_.hinges;
  return first_moment() + static_cast<std::size_t>(std::count_if(
                              hinges.begin(), hinges.end(), [](HingeHold hold) { return hold != HingeHold::free; }));
}

std::size_t Balance::unknowns() const {
  return first_line() + problem_.lines.size() + (problem_.floor ? std::size_t{1} : std::size_t{0});
}

double Balance::weight() const {
  double mass = 0.0;
  for (const SectionMass& section : problem_.masses) mass += section.mass;
  return mass * problem_.gravity;
}

void Balance::load(SmallSystem& system, int section, Vec2 p_W, Vec2 force) const {
  const std::size_t row = 3 * index(section);
  system.b[row] -= force.x;
  system.b[row + 1] -= force.y;
  system.b[row + 2] -= cross(p_W - proximal(section), force);
}

void Balance::add_force(SmallSystem& system, const SectionLoad& load, std::size_t column) const {
  const std::size_t row = 3 * index(load.section);
  const Vec2 arm = X_W_[index(load.section)] * load.at - proximal(load.section);
  system.at(row, column) += load.force.x;
  system.at(row + 1, column) += load.force.y;
  system.at(row + 2, column) += cross(arm, load.force);
}

// The joint's force acts on its section at the proximal end, and the other way round on the section above.
void Balance::add_joints(SmallSystem& system) const {
  for (int j = 0; j < sections_; ++j) {
    const std::size_t column = 2 * index(j), row = 3 * index(j);
    system.at(row, column) = system.at(row + 1, column + 1) = 1.0;
    if (j == 0) continue;
    const Vec2 arm = proximal(j) - proximal(j - 1);
    system.at(row - 3, column) = system.at(row - 2, column + 1) = -1.0;
    system.at(row - 1, column) = arm.y;
    system.at(row - 1, column + 1) = -arm.x;
  }
}

void Balance::add_moments(SmallSystem& system) const {
  std::size_t column = first_moment();
  for (std::size_t k = 0; k < problem_.hinges.size(); ++k) {
    if (problem_.hinges[k] == HingeHold::free) continue;
    system.at(3 * (k + 1) + 2, column) = 1.0;
    if (problem_.hinges[k] == HingeHold::held) system.at(3 * k + 2, column) = -1.0;
    ++column;
  }
}

void Balance::add_floor(SmallSystem& system, std::size_t column) const {
  const std::size_t row = 3 * index(sections_ - 1);
  const Vec2 force{problem_.floor->friction, 1.0};
  system.at(row, column) = force.x;
  system.at(row + 1, column) = force.y;
  system.at(row + 2, column) = cross(floor_contact_point(problem_, X_W_) - proximal(sections_ - 1), force);
}

SmallSystem Balance::frictionless() const {
  SmallSystem system(unknowns());
  add_joints(system);
  add_moments(system);
  std::size_t column = first_line();
  for (const LineLoad& line : problem_.lines) {
    for (const SectionLoad& force : line.per_unit) add_force(system, force, column);
    ++column;
  }
  if (problem_.floor) add_floor(system, column);
  for (int j = 0; j < sections_; ++j) {
    const SectionMass& section = problem_.masses[index(j)];
    load(system, j, X_W_[index(j)] * section.centre, {0.0, -problem_.gravity * section.mass});
  }
  for (const SectionLoad& given : problem_.given)
    load(system, given.section, X_W_[index(given.section)] * given.at, given.force);
  return system;
}

void Balance::add_drag(SmallSystem& system, const std::array<double, kMaxSections>& size) const {
  for (int j = 0; j < sections_; ++j) {
    const double couple = -std::copysign(size[index(j)], problem_.joint_drag[index(j)]);
    system.b[3 * index(j) + 2] -= couple;
    if (j > 0) system.b[3 * index(j) - 1] += couple;
  }
}

Reactions Balance::read(const std::vector<double>& x) const {
  Reactions found;
  found.hook = {x[0], x[1]};
  for (int j = 1; j < sections_; ++j) found.hinge[index(j - 1)] = {x[2 * index(j)], x[2 * index(j) + 1]};
  std::size_t column = first_moment();
  for (std::size_t k = 0; k < problem_.hinges.size(); ++k)
    if (problem_.hinges[k] != HingeHold::free) found.hinge_moment[k] = x[column++];
  for (std::size_t i = 0; i < problem_.lines.size(); ++i) found.tension.push_back(x[column++]);
  if (problem_.floor) found.floor = x[column] * Vec2{problem_.floor->friction, 1.0};
  for (int j = 0; j < sections_; ++j) {
    const double force = norm(j == 0 ? found.hook : found.hinge[index(j - 1)]);
    found.drag[index(j)] = std::abs(problem_.joint_drag[index(j)]) * force;
  }
  return found;
}

// Drag is a small part of the moments, so that each round takes a small part of the last change.
Reactions Balance::solve() const {
  const SmallSystem bare = frictionless();
  std::array<double, kMaxSections> drag{};
  for (int round = 0; round < kMaxRounds; ++round) {
    SmallSystem system = bare;
    add_drag(system, drag);
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
    found.residual = residual_of(system, *x) / std::max(weight(), 1.0);
    return found;
  }
  return {};
}

}  // namespace

Vec2 floor_contact_point(const StaticsProblem& problem, const SectionPoses& X_W) {
  const Vec2 axle = X_W[index(problem.linkage.sections - 1)] * problem.floor->axle;
  return axle - Vec2{0.0, problem.floor->below};
}

LineLoad line_load(const Rigging& rigging, const std::vector<RopeSegment>& segments,
                   const std::vector<double>& shares) {
  const auto forces = point_forces(rigging, segments, shares);
  LineLoad load;
  for (std::size_t i = 0; i < forces.size(); ++i)
    if (rigging.points[i].section >= 0)
      load.per_unit.push_back({rigging.points[i].section, rigging.points[i].at, forces[i].side});
  return load;
}

Reactions solve_statics(const StaticsProblem& problem) {
  const Balance balance(problem);
  return balance.counts_match() ? balance.solve() : Reactions{};
}

}  // namespace stowpath
