// The standing stair's states, held against equilibrium of forces and moments in three dimensions.
#include "sim/loads/standing_state.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/loads/climber.h"
#include "sim/trade/us_units.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

struct Stood {
  Scene scene;
  Model model;
  StandingStair stair;
  std::vector<LoadCase> cases;

  explicit Stood(Scene its_scene)
      : scene(std::move(its_scene)),
        model(build_model(scene)),
        stair(stand_still(scene, model, 9.65e9)),
        cases(load_cases(scene.climber)) {}
};

double moment_of(const std::vector<double>& forces, const std::vector<double>& stations) {
  double sum = 0.0;
  for (std::size_t i = 0; i < forces.size(); ++i) sum += forces[i] * stations[i];
  return sum;
}

double own_weight(const Stood& stood) {
  double sum = 0.0;
  for (const Weight& weight : own_weights(stood.stair)) sum += weight.force;
  return sum;
}

LoadCase plain(double mass, double aside) { return {"one person", mass, aside, 0.0, 0.0, false, false, {}}; }

}  // namespace

TEST_CASE("standing states: hooks and casters carry what stands on the stair, and balance it across", "[loads]") {
  const Stood stood(testing::sample_scene());
  for (const Standpoint& point : standpoints(stood.stair)) {
    for (const double aside : {0.0, 0.1, 0.2}) {
      for (const StandingState& state : standing_states_at(stood.stair, plain(120.0, aside), point)) {
        INFO(state.where);
        const double total = own_weight(stood) + 120.0 * kGravity;
        CHECK(sum_of(state.hooks) + sum_of(state.casters) == Approx(total).epsilon(1e-12));
        const double across = moment_of(state.hooks, stood.scene.stair.hooks.stations) +
                              moment_of(state.casters, stood.scene.stair.casters.stations);
        const double moment = state.where.find(" to the ") == std::string::npos ? 0.0 : 120.0 * kGravity * aside;
        CHECK(std::abs(across) == Approx(moment).margin(1e-9 * total));
      }
    }
  }
}

TEST_CASE("standing states: about the pivot all forces balance in the side view, a push too", "[loads]") {
  const Stood stood(testing::sample_scene());
  LoadCase pushed = plain(100.0, 0.0);
  pushed.push = 300.0;
  const Vec2 pivot = stood.model.linkage.pivot;
  for (const Standpoint& point : standpoints(stood.stair)) {
    for (const StandingState& state : standing_states_at(stood.stair, pushed, point)) {
      const Vec2 at = stood.stair.room(point.section, point.at);
      const double push = -state.thrust;
      double turning = state.floor * (stood.stair.axle.x - pivot.x) + cross(at - pivot, {push, -100.0 * kGravity});
      for (const Weight& own : own_weights(stood.stair)) turning -= own.force * (own.at.x - pivot.x);
      CHECK(turning == Approx(0.0).margin(1e-6));
      CHECK((push == 0.0 || std::abs(push) == 300.0));
    }
  }
}

TEST_CASE("standing states: no foot pulls unless the stair would tip, and uneven ways have a foot in the air",
          "[loads]") {
  const Stood stood(testing::sample_scene());
  for (const StandingState& state :
       standing_states_at(stood.stair, plain(136.0, 0.15), standpoints(stood.stair).back())) {
    INFO(state.where);
    double least = 1e9;
    for (const double force : state.hooks) least = std::min(least, force);
    for (const double force : state.casters) least = std::min(least, force);
    CHECK(least >= -1e-9);
    if (state.where.find("in the air") != std::string::npos) CHECK(least < 1e-6);
  }
}

// One side rail is a simple beam's end: a foot at a share of the way between the rails puts that share on it.
TEST_CASE("standing states: a foot 150 mm aside puts its share of the person on the near side rail", "[loads]") {
  Stood stood(testing::one_section_scene());
  for (SectionMass& mass : stood.model.masses) mass.mass = 0.0;
  const StandingStair light = stand_still(stood.scene, stood.model, 9.65e9);
  const double apart = stood.scene.stair.width - stood.scene.stair.side_rails.thickness;
  const Standpoint point = standpoints(light)[4];
  const StandingState& right = standing_states_at(light, plain(100.0, 0.15), point)[6];
  REQUIRE(right.where.find("to the right") != std::string::npos);
  const StandingState middle = standing_states_at(light, plain(100.0, 0.0), point).front();
  CHECK(right.sides[1].bending == Approx((1.0 + 2 * 0.15 / apart) * middle.sides[1].bending));
  CHECK(right.sides[0].bending == Approx((1.0 - 2 * 0.15 / apart) * middle.sides[0].bending));
}

TEST_CASE("standing states: a body beyond the casters lifts the hooks off, its own weight against that", "[loads]") {
  const Stood stood(testing::sample_scene());
  LoadCase leaning = plain(90.0, 0.0);
  const Standpoint lowest = standpoints(stood.stair).front();
  const double at = stood.stair.room(lowest.section, lowest.at).x;
  leaning.beyond = stood.stair.axle.x - at + 0.2;
  const StandingState state = standing_states_at(stood.stair, leaning, lowest).front();
  const double reach = stood.stair.axle.x - stood.model.linkage.pivot.x;
  CHECK(state.lifts == Approx(90.0 * kGravity * 0.2 / reach));
  CHECK(state.held_down > 0.0);
  leaning.beyond = stood.stair.axle.x - at - 0.01;
  CHECK(standing_states_at(stood.stair, leaning, lowest).front().lifts == 0.0);
}

TEST_CASE("standing states: a person outside of hooks and casters tips the stair to its side", "[loads]") {
  const Stood stood(testing::sample_scene());
  const Standpoint point = standpoints(stood.stair)[3];
  CHECK(standing_states_at(stood.stair, plain(90.0, 0.1), point).front().tips == 0.0);
  const auto far = standing_states_at(stood.stair, plain(90.0, 0.4), point);
  CHECK(
      std::any_of(far.begin(), far.end(), [](const StandingState& s) { return s.tips > 0.0 && s.tipping_held > 0.0; }));
}

TEST_CASE("standing states: a case more, more weight or a wider stance never makes any hook's or rail's worst less",
          "[loads]") {
  const Stood stood(testing::sample_scene());
  const auto worst = [&](const std::vector<LoadCase>& cases) {
    double hook = 0.0, rail = 0.0;
    for (const StandingState& state : standing_states(stood.stair, cases)) {
      for (const double force : state.hooks) hook = std::max(hook, force);
      for (const SideLoad& side : state.sides) rail = std::max(rail, side.bending);
    }
    return std::pair{hook, rail};
  };
  const auto base = worst({plain(90.0, 0.1)});
  for (const auto& cases : {std::vector{plain(90.0, 0.1), plain(50.0, 0.3)}, std::vector{plain(91.0, 0.1)},
                            std::vector{plain(90.0, 0.12)}}) {
    const auto more = worst(cases);
    CHECK(more.first >= base.first);
    CHECK(more.second >= base.second);
  }
}

TEST_CASE("load cases: what must not break the stair is five times the usual load, and 1,000 lb at least", "[loads]") {
  Climber climber;
  const auto broken_by = [](const Climber& c) { return load_cases(c).back().mass; };
  CHECK(load_cases(climber).back().ultimate);
  CHECK(broken_by(climber) == Approx(1000 * kPound));
  climber.usual = 150.0;
  CHECK(broken_by(climber) == Approx(750.0));
  climber.usual = 40.0;
  CHECK(broken_by(climber) == Approx(1000 * kPound));
}
