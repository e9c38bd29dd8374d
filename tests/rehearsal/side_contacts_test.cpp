// Who pushes whom in the side world: hooks off the pipe, things that touched before a pin went in, overlaps from the
// start.
#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>

#include <catch2/catch.hpp>

#include "tests/support/hinged_rods.h"

namespace stowpath {
namespace {

constexpr double kStep = 1.0 / 960.0;
constexpr double kLong = 2.0, kMass = 20.0;  // [m, kg]
constexpr double kLevel = 0.5 * std::numbers::pi;

void add_part(Model& model, PartKind kind, int section, const RoundedPolygon& outline) {
  model.stair.push_back({kind, "part", section, outline, {{-0.3, 0.3}}, false, -1});
}

void add_thing(Model& model, PartKind kind, const RoundedPolygon& outline) {
  const int number = static_cast<int>(model.room.size());
  model.room.push_back({kind, "thing", outline, {{-0.3, 0.3}}, 0.0, number});
}

// A level rod off the pivot, two feet of it on a long bench: does a level push, as a share of its weight, slide it?
bool slides(PartKind foot, PartKind bench, const FrictionChoice& friction, double share) {
  Model rod = testing::hinged_rods(1, kLong, kMass);
  for (const double along : {0.2, 1.8}) add_part(rod, foot, 0, make_disc({along, 0.0}, 0.05));
  add_thing(rod, bench, make_box({-2.0, -0.15}, {4.0, -0.05}));
  SideSetup setup = testing::bare_setup(rod, kStep);
  setup.on_pipe = false;
  setup.friction = friction;
  SideWorld world(rod, setup, {0.0, kLevel, {}});
  for (int i = 0; i < 960; ++i) world.step();  // it settles
  const double from = world.poses()[0].p.x;
  for (int i = 0; i < 960; ++i) {
    world.push(0, {1.0, -0.05}, {share * kMass * kGravity, 0.0});  // at the bench's face, so that it tips nothing
    world.step();
  }
  return std::abs(world.poses()[0].p.x - from) > 0.01;
}

TEST_CASE("side contacts: hooks off the pipe slide on it from the scene's friction on", "[rehearsal]") {
  for (const double mu : {0.15, 0.6}) {
    const FrictionChoice friction{mu, 0.3, 0.3};
    CAPTURE(mu);
    CHECK_FALSE(slides(PartKind::hook, PartKind::pipe, friction, 0.9 * mu));
    CHECK(slides(PartKind::hook, PartKind::pipe, friction, 1.1 * mu));
  }
}

// The lower of two hanging rods, thrown against a post beside it and drawn on.
struct Pressed {
  Model model;
  std::unique_ptr<SideWorld> world;

  explicit Pressed(bool pinned) : model(testing::hinged_rods(2, 1.0, kMass)) {
    add_part(model, PartKind::extra, 1, make_disc({0.9, 0.0}, 0.03));
    add_thing(model, PartKind::obstacle, make_disc({pinned ? 0.3 : 0.15, -1.9}, 0.03));
    SideSetup setup = testing::bare_setup(model, kStep);
    setup.pinned = {pinned};
    world = std::make_unique<SideWorld>(model, setup, Configuration{});
  }
  void press(double seconds) {
    for (int i = 0; i < static_cast<int>(seconds / kStep); ++i) {
      world->push(1, {0.9, 0.0}, {400.0, 0.0});
      world->step();
    }
  }
  double distance() const { return part_distance(world->parts()[0], world->parts()[1], world->poses()); }
};

TEST_CASE("side contacts: what pushes goes on pushing when a pin is pulled or goes in", "[rehearsal]") {
  for (const bool pinned : {true, false}) {
    Pressed pressed(pinned);
    pressed.press(1.0);
    REQUIRE(pressed.distance() < -2e-4);  // so deep, a pair met at the start is set aside
    REQUIRE(pressed.distance() > -kWorldSkin);
    pressed.world->set_pinned({!pinned});
    CHECK(pressed.world->met_from_start().empty());
    pressed.press(1.0);
    CAPTURE(pinned);
    CHECK(pressed.distance() > -kWorldSkin);
  }
}

TEST_CASE("side contacts: what pushes goes on pushing at another station, if it is there too", "[rehearsal]") {
  Pressed pressed(true);
  pressed.press(1.0);
  REQUIRE(pressed.distance() < -2e-4);
  pressed.world->move_to(0.1);
  CHECK(pressed.world->met_from_start().empty());
  pressed.press(1.0);
  CHECK(pressed.distance() > -kWorldSkin);
}

TEST_CASE("side contacts: parts of two sections that overlap are told, whether their pin is in or out", "[rehearsal]") {
  Model rods = testing::hinged_rods(2, 1.0, kMass);
  add_part(rods, PartKind::extra, 0, make_box({0.8, 0.0}, {1.0, 0.1}));
  add_part(rods, PartKind::extra, 1, make_box({-0.1, 0.05}, {0.1, 0.15}));
  SideSetup setup = testing::bare_setup(rods, kStep);
  setup.pinned = {true};
  SideWorld world(rods, setup, {});
  CHECK(world.met_from_start().size() == 1);
  world.set_pinned({false});
  CHECK(world.met_from_start().size() == 1);
}

}  // namespace
}  // namespace stowpath
