#include "sim/hoist/rigging.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numeric>

#include "sim/hoist/rope_geometry.h"
#include "sim/hoist/tackle.h"
#include "sim/mechanism/standing.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

Scene rigged(int parts, SheaveKind sheaves, SheaveFriction friction, std::size_t leads) {
  Scene scene = testing::sample_scene();
  HoistLine& line = scene.hoist->line;
  line.parts = parts;
  line.sheaves = sheaves;
  line.friction = friction;
  line.leads.clear();
  line.leads.assign(leads, {{2.0, 3.5}, 4.0});
  return scene;
}

// Hand's pull for a load of 1 N at the moving block.
double hand_factor(const Rigging& rigging, Haul haul) {
  const auto shares = tension_shares(rigging, haul);
  return 1.0 / std::accumulate(shares.begin(), shares.begin() + rigging.parts, 0.0);
}

}  // namespace

// sources.md 5.1, S-TKL-geo table (derived, tolerance 5e-5 for its four digits).
TEST_CASE("rigging: geometric shares give the wire rope handbook's lead line factors", "[hoist][published]") {
  const double plain[8] = {1.0900, 0.5685, 0.3951, 0.3087, 0.2571, 0.2229, 0.1987, 0.1807};
  const double roller[8] = {1.0400, 0.5302, 0.3603, 0.2755, 0.2246, 0.1908, 0.1666, 0.1485};
  for (int n = 1; n <= 8; ++n) {
    const auto geometric = [&](SheaveKind kind) {
      return hand_factor(hoist_rigging(rigged(n, kind, SheaveFriction::geometric, 0)), Haul::raising);
    };
    CHECK(geometric(SheaveKind::plain) == Approx(plain[n - 1]).margin(5.1e-5));
    CHECK(geometric(SheaveKind::roller) == Approx(roller[n - 1]).margin(5.1e-5));
  }
}

// sources.md W9: Wire Rope Users Manual, 4 parts on plain sheaves and 2 leads, 6000 lb: 2200.4 lb unrounded (verified
// and derived); the lowering line of section 5.1: 200.61 lb for 1000 lb.
TEST_CASE("rigging: leads cost a factor each, and lowering takes less than holding", "[hoist][published]") {
  const Rigging four = hoist_rigging(rigged(4, SheaveKind::plain, SheaveFriction::geometric, 0));
  const Rigging led = hoist_rigging(rigged(4, SheaveKind::plain, SheaveFriction::geometric, 2));
  CHECK(6000 * hand_factor(led, Haul::raising) == Approx(2200.4).margin(0.05));
  CHECK(1000 * hand_factor(four, Haul::raising) == Approx(308.67).margin(0.005));
  CHECK(1000 * hand_factor(four, Haul::holding) == Approx(250.0).epsilon(1e-12));
  CHECK(1000 * hand_factor(four, Haul::lowering) == Approx(200.61).margin(0.005));
}

// sources.md 5.1: Nicholls' seamanship, (W + n W/10) / P; W8a, W8e and a lead added to a double purchase.
TEST_CASE("rigging: additive shares give Nicholls' pulls", "[hoist][published]") {
  const auto pull = [](double load, int parts, std::size_t leads) {
    return load *
           hand_factor(hoist_rigging(rigged(parts, SheaveKind::plain, SheaveFriction::additive, leads)), Haul::raising);
  };
  CHECK(pull(4, 2, 0) == Approx(2.4));
  CHECK(pull(15, 3, 0) == Approx(6.5));
  CHECK(pull(12, 6, 0) == Approx(3.2));
  CHECK(pull(20, 4, 1) == Approx(20 * 1.5 / 4));
}

TEST_CASE("rigging: shares agree with the tackle's closed forms", "[hoist]") {
  for (int parts = 1; parts <= 8; ++parts)
    for (const int leads : {0, 1, 3}) {
      const auto rig = [&](SheaveFriction friction) {
        return hoist_rigging(rigged(parts, SheaveKind::plain, friction, static_cast<std::size_t>(leads)));
      };
      const Rigging geometric = rig(SheaveFriction::geometric);
      CHECK(hand_factor(geometric, Haul::raising) == Approx(lead_line_factor(1.09, parts, leads)).epsilon(1e-12));
      CHECK(hand_factor(geometric, Haul::lowering) == Approx(lowering_factor(1.09, parts, leads)).epsilon(1e-12));
      CHECK(hand_factor(rig(SheaveFriction::additive), Haul::raising) ==
            Approx(additive_pull(1.0, parts + leads, parts)).epsilon(1e-12));
      CHECK(hand_factor(rig(SheaveFriction::ideal), Haul::raising) == Approx(1.0 / parts).epsilon(1e-12));
    }
}

TEST_CASE("rigging: the dead end is at the ceiling for even parts and at the pick for odd ones", "[hoist]") {
  for (int n = 1; n <= 6; ++n) {
    const Rigging rigging = hoist_rigging(rigged(n, SheaveKind::plain, SheaveFriction::geometric, 1));
    CHECK(rigging.points.front().name == (n % 2 == 0 ? "ceiling point" : "pick"));
    CHECK_FALSE(rigging.points.front().sheave);
    CHECK(rigging.points[static_cast<std::size_t>(n)].name == "ceiling point");
    CHECK(sheave_count(rigging) == n + 1);
    CHECK(rigging.points.back().name == "hand");
  }
}

TEST_CASE("rigging: the rope is as long as its parts, its lead and its fall", "[hoist]") {
  const Scene scene = rigged(3, SheaveKind::plain, SheaveFriction::geometric, 1);
  const Linkage linkage = make_linkage(scene);
  Configuration pose;
  pose.station = 4.5;
  pose.lean = 1.0;
  const Vec2 pick = linkage.pivot + Vec2{1.7 * std::sin(1.0), -1.7 * std::cos(1.0)};
  const Vec2 ceiling{2.550, 4.080}, lead{2.0, 3.5};
  const double part = std::hypot(pick.x - ceiling.x, pick.y - ceiling.y, 0.5);
  CHECK(rope_length(hoist_rigging(scene), linkage, pose) == Approx(3 * part + norm(lead - ceiling) + 2.3));
}

TEST_CASE("rigging: a rolling hoist keeps its ceiling point over the stair", "[hoist]") {
  Scene scene = rigged(2, SheaveKind::plain, SheaveFriction::geometric, 0);
  scene.hoist->rolls = true;
  const Linkage linkage = make_linkage(scene);
  const Rigging rigging = hoist_rigging(scene);
  Configuration here, there;
  here.lean = there.lean = 1.0;
  there.station = 3.0;
  CHECK(rope_length(rigging, linkage, here) == rope_length(rigging, linkage, there));
}

TEST_CASE("rigging: the pull on all points of a rope comes to nothing", "[hoist]") {
  const Scene scene = rigged(5, SheaveKind::plain, SheaveFriction::geometric, 2);
  const Linkage linkage = make_linkage(scene);
  const Rigging rigging = hoist_rigging(scene);
  Configuration pose;
  pose.lean = 0.8;
  Vec2 sum;
  const auto segments = rope_segments(rigging, linkage, pose);
  for (const Vec3& force : point_forces(rigging, segments, tension_shares(rigging, Haul::raising)))
    sum = sum + force.side;
  CHECK(norm(sum) <= 1e-14);  // eight unit forces' rounding
}
