#include "sim/loads/hook_forces.h"

#include <algorithm>
#include <cmath>

#include "sim/geometry/union_outline.h"

namespace stowpath {

namespace {

using States = std::vector<const StandingState*>;

std::vector<double> pressed(const std::vector<double>& hooks) {
  std::vector<double> out = hooks;
  for (double& force : out) force = std::max(0.0, force);  // a hook that is lifted is off the pipe
  return out;
}

HookForces forces_of(const Model& model, const StandingState& state, const std::vector<double>& hooks) {
  const double all = sum_of(hooks);
  HookForces out{state.where,
                 {-state.thrust, -all},
                 std::vector<double>(hooks.size(), 1.0 / static_cast<double>(hooks.size())),
                 model.span};
  out.ultimate = state.ultimate;
  if (all > 0.0)
    for (std::size_t i = 0; i < hooks.size(); ++i) out.share[i] = hooks[i] / all;
  return out;
}

/// The states at the corners of the hull of their points, the unloaded pipe taken with them: all others lie between.
template <class State, class PointOf>
std::vector<const State*> corner_states(const std::vector<const State*>& states, PointOf point_of) {
  constexpr Vec2 kUnloaded{0.0, 0.0};
  std::vector<Vec2> points{kUnloaded};
  for (const State* state : states) points.push_back(point_of(*state));
  std::vector<const State*> out;
  for (const Vec2 corner : convex_hull(points)) {
    const auto here = [&](const State* state) { return point_of(*state) == corner; };
    if (!(corner == kUnloaded)) out.push_back(*std::find_if(states.begin(), states.end(), here));
  }
  return out;
}

std::vector<HookForces> of_two(const Model& model, const States& states) {
  const auto both_hooks = [](const StandingState& state) {
    const std::vector<double> hooks = pressed(state.hooks);
    return Vec2{hooks[0], hooks[1]};
  };
  std::vector<HookForces> out;
  for (const StandingState* state : corner_states(states, both_hooks))
    out.push_back(forces_of(model, *state, pressed(state->hooks)));
  return out;
}

double most_on_one(const States& states) {
  double one = 0.0;
  for (const StandingState* state : states)
    for (const double hook : state->hooks) one = std::max(one, hook);
  return one;
}

/// More hooks, or one: alike, and each in turn with the most that any gets, the rest sharing alike.
std::vector<HookForces> of_many(const Model& model, const States& states) {
  const auto less = [](const StandingState* a, const StandingState* b) { return sum_of(a->hooks) < sum_of(b->hooks); };
  const StandingState& state = **std::max_element(states.begin(), states.end(), less);
  const std::size_t hooks = state.hooks.size();
  const double all = sum_of(pressed(state.hooks)), most = std::min(all, most_on_one(states));
  std::vector<HookForces> out{forces_of(model, state, std::vector<double>(hooks, all / static_cast<double>(hooks)))};
  for (std::size_t i = 0; hooks > 1 && i < hooks; ++i) {
    std::vector<double> uneven(hooks, (all - most) / static_cast<double>(hooks - 1));
    uneven[i] = most;
    out.push_back(forces_of(model, state, uneven));
  }
  return out;
}

void add_group(const Model& model, const States& states, std::vector<HookForces>& out) {
  if (states.empty()) return;
  const std::vector<HookForces> some =
      states.front()->hooks.size() == 2 ? of_two(model, states) : of_many(model, states);
  out.insert(out.end(), some.begin(), some.end());
}

template <class Belongs>
States states_that(const ClimberReport& report, Belongs belongs) {
  States out;
  for (const StandingState& state : report.states)
    if (belongs(state)) out.push_back(&state);
  return out;
}

}  // namespace

std::vector<HookForces> standing_hook_forces(const Model& model, const ClimberReport& report) {
  std::vector<HookForces> out;
  add_group(model, states_that(report, [](const StandingState& state) { return state.load_case == 0; }), out);
  return out;
}

std::vector<HookForces> all_hook_forces(const Model& model, const ClimberReport& report) {
  std::vector<HookForces> out;
  add_group(model, states_that(report, [](const StandingState& s) { return !s.ultimate && s.thrust == 0.0; }), out);
  add_group(model, states_that(report, [](const StandingState& s) { return !s.ultimate && s.thrust > 0.0; }), out);
  add_group(model, states_that(report, [](const StandingState& s) { return !s.ultimate && s.thrust < 0.0; }), out);
  add_group(model, states_that(report, [](const StandingState& s) { return s.ultimate; }), out);
  return out;
}

std::vector<HookForces> hoisted_hook_forces(const Scene& scene, const Model& model, const HoistLoads& hoist) {
  const std::size_t hooks = scene.stair.hooks.stations.size();
  const bool at_home = model.home && !(scene.hoist && scene.hoist->rolls);
  const Interval stations =
      at_home ? Interval{*model.home - model.home_within, *model.home + model.home_within} : model.span;
  const auto on_pipe = [&](const HoistState& s) { return -(s.moving() ? scene.dynamic_factor : 1.0) * s.hooks; };
  std::vector<const HoistState*> states;
  for (const HoistState& state : hoist.states) states.push_back(&state);
  std::vector<HookForces> out;
  for (const HoistState* state : corner_states(states, on_pipe)) {
    out.push_back(
        {state->where, on_pipe(*state), std::vector<double>(hooks, 1.0 / static_cast<double>(hooks)), stations});
    out.back().moving = state->moving();
  }
  return out;
}

}  // namespace stowpath
