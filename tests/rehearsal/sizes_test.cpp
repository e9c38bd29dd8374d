// Debian's Box2D stops the program at a shape or a mass that it does not like: nothing of that kind may get there.
#include <cmath>
#include <random>
#include <stdexcept>

#include <catch2/catch.hpp>

#include "tests/support/hinged_rods.h"
#include "tests/support/random_outlines.h"

namespace stowpath {
namespace {

using testing::uniform;

double any_size(std::mt19937& random, double lo, double hi) {
  return std::exp(uniform(random, std::log(lo), std::log(hi)));
}

// A hundredth of a millimetre to ninety metres, thick or thin, near or far.
RoundedPolygon any_outline(std::mt19937& random) {
  RoundedPolygon shape = testing::random_outline(random);
  const double size = any_size(random, 1e-5, 90.0), flat = uniform(random, 0.0, 1.0) < 0.3 ? 1e-4 : 1.0;
  const Vec2 at{uniform(random, -1.0, 1.0) * any_size(random, 1e-3, 90.0), uniform(random, -90.0, 90.0)};
  const Vec2 from = shape.core.front();
  for (Vec2& corner : shape.core) {
    const Vec2 off = corner - from;
    corner = at + Vec2{size * off.x, size * flat * off.y};
  }
  shape.radius *= size;
  return shape;
}

// Sections of a gram to a thousand tons, a millimetre to ninety metres long.
Model any_chain(int sections, std::mt19937& random) {
  Model model = testing::hinged_rods(sections, 1.0, 1.0);
  model.linkage.pivot = {uniform(random, -50.0, 50.0), uniform(random, -50.0, 50.0)};
  for (int j = 0; j < sections; ++j) {
    const auto section = static_cast<std::size_t>(j);
    const double length = any_size(random, 1e-3, 90.0), mass = any_size(random, 1e-3, 1e6);
    model.linkage.length[section] = length;
    model.masses[section] = {mass, {uniform(random, 0.0, length), 0.1 * length}, 0.01 * mass * length * length};
  }
  for (int k = 0; k < 12; ++k) {
    const RoundedPolygon shape = any_outline(random);
    if (k % 2 == 0)
      model.stair.push_back({PartKind::extra, "part", k % sections, shape, {{-0.3, 0.3}}, false, -1});
    else
      model.room.push_back({PartKind::obstacle, "thing", shape, {{-1.0, 1.0}}, 0.0, k});
  }
  return model;
}

bool all_finite(const SideWorld& world) {
  for (const Pose2& X_W : world.poses())
    if (!std::isfinite(X_W.p.x) || !std::isfinite(X_W.p.y) || !std::isfinite(X_W.s)) return false;
  return true;
}

TEST_CASE("sizes: parts of any size and sections of any weight are run, and nothing runs away", "[rehearsal][random]") {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    std::mt19937 random(seed);
    const int sections = 1 + static_cast<int>(seed % 3);
    const Model model = any_chain(sections, random);
    SideSetup setup = testing::bare_setup(model, 1.0 / 960.0);
    setup.friction = {0.3, 0.2, 0.5};
    setup.hook_radius = 0.02;
    SideWorld world(model, setup, {0.0, uniform(random, -3.0, 3.0), {uniform(random, -3.0, 3.0), 1.0}});
    world.start_from_rest();
    const std::vector<bool> pinned(static_cast<std::size_t>(sections - 1), true);
    for (int i = 0; i < 30; ++i) {
      if (i == 10) world.set_pinned(pinned);
      world.step();
    }
    CHECK(all_finite(world));
  }
}

TEST_CASE("sizes: what the engine could not bear is refused", "[rehearsal]") {
  const Model model = testing::hinged_rods(2, 1.0, 10.0);
  const auto refused = [&](auto change) {
    SideSetup setup = testing::bare_setup(model, 1.0 / 960.0);
    change(setup);
    CHECK_THROWS_AS(SideWorld(model, setup, {}), std::invalid_argument);
  };
  refused([](SideSetup& s) { s.step = 0.0; });
  refused([](SideSetup& s) { s.step = 0.1; });
  refused([](SideSetup& s) { s.step = std::nan(""); });
  refused([](SideSetup& s) { s.masses.pop_back(); });
  refused([](SideSetup& s) { s.masses[0].mass = 0.0; });
  refused([](SideSetup& s) { s.masses[1].inertia = -1.0; });
  refused([](SideSetup& s) { s.masses[1].inertia = std::nan(""); });
  refused([](SideSetup& s) { s.masses[1].centre.x = INFINITY; });
  refused([](SideSetup& s) { s.masses[1].inertia = 1e-6; });  // a weight without size, half a metre from its hinge
}

}  // namespace
}  // namespace stowpath
