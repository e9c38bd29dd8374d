#include "sim/mechanism/mass.h"

#include <catch2/catch.hpp>

#include <numbers>

#include "sim/mechanism/standing.h"
#include "sim/trade/lumber.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;
using stowpath::testing::sample_scene;

namespace {

StairPart box_part(PartKind kind, int section, Vec2 least, Vec2 greatest, std::vector<Interval> stations) {
  return {kind, "part", section, make_box(least, greatest), std::move(stations)};
}

Scene bare() {
  Scene scene = sample_scene();
  scene.stair.casters.mass = 0.0;
  scene.stair.extras.clear();
  return scene;
}

}  // namespace

TEST_CASE("mass: boards weigh their volume times the species' density, at the middle of their areas", "[mechanism]") {
  const Scene scene = bare();
  const double density = find_species("SPF")->density;
  const auto masses =
      section_masses(scene, make_linkage(scene),
                     {box_part(PartKind::side_rail, 0, {0.0, -0.07}, {2.0, 0.07}, {{-0.28, -0.24}, {0.24, 0.28}}),
                      box_part(PartKind::tread, 0, {1.0, 0.0}, {1.4, 0.1}, {{-0.24, 0.24}})});
  const double rails = density * 2.0 * 0.14 * 0.08, tread = density * 0.4 * 0.1 * 0.48;
  CHECK(masses[0].mass == Approx(rails + tread));
  CHECK(masses[0].centre.x == Approx((rails * 1.0 + tread * 1.2) / (rails + tread)));
  CHECK(masses[0].centre.y == Approx(tread * 0.05 / (rails + tread)));
  CHECK(masses[1].mass == 0.0);
}

TEST_CASE("mass: a hook weighs as round steel bar", "[mechanism]") {
  const Scene scene = bare();
  const auto masses = section_masses(scene, make_linkage(scene),
                                     {box_part(PartKind::hook, 0, {0.0, 0.02}, {0.15, 0.032}, {{-0.006, 0.006}})});
  CHECK(masses[0].mass == Approx(7850.0 * std::numbers::pi * 0.006 * 0.006 * 0.15));
}

TEST_CASE("mass: casters weigh at their axle, extras at their middle, and bolts nothing", "[mechanism]") {
  const Scene scene = sample_scene();
  const auto masses = section_masses(scene, make_linkage(scene),
                                     {box_part(PartKind::lock_pin, 0, {0.0, 0.0}, {1.0, 1.0}, {{0.0, 1.0}})});
  CHECK(masses[1].mass == Approx(0.8));
  CHECK(masses[1].centre.x == Approx(1.500));
  CHECK(masses[0].mass == Approx(0.6));
  CHECK(masses[0].centre.x == Approx(1.630));
  CHECK(masses[0].centre.y == Approx(-0.075));
}

TEST_CASE("mass: a capsule's area and middle are those of the true shape", "[mechanism]") {
  Scene scene = bare();
  const double density = find_species("SPF")->density, area = 0.04 * 1.0 + std::numbers::pi * 0.02 * 0.02;
  const auto masses =
      section_masses(scene, make_linkage(scene),
                     {{PartKind::handrail, "handrail", 0, make_capsule({0.1, 0.6}, {1.1, 0.6}, 0.02), {{0.0, 0.04}}}});
  CHECK(masses[0].mass == Approx(density * area * 0.04).epsilon(1e-3));  // rounded ends are drawn within 0.1 mm
  CHECK(masses[0].centre.x == Approx(0.6).margin(1e-12));
}

TEST_CASE("mass: a chain's centre weighs its sections laid straight", "[mechanism]") {
  const Linkage linkage{{}, 3, {1.0, 0.8, 0.6}, {}, {-1.0, -1.0}};
  const std::vector<SectionMass> masses{{9.0, {0.5, 0.0}}, {3.0, {0.4, 0.1}}, {1.0, {0.3, -0.1}}};
  const SectionMass chain = chain_mass(linkage, masses, 1);
  CHECK(chain.mass == Approx(4.0));
  CHECK(chain.centre.x == Approx((3.0 * 0.4 + 1.1) / 4.0));
  CHECK(chain.centre.y == Approx((3.0 * 0.1 - 0.1) / 4.0));
}
