#include "sim/mechanism/mass.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "sim/mechanism/hook_parts.h"
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

TEST_CASE("mass: a plate hook weighs once where its rim and parts overlap, and a roller as a steel disc",
          "[mechanism]") {
  Scene scene = bare();
  Hooks& hooks = scene.stair.hooks;
  hooks.form = HookForm::plate;
  hooks.rim = 0.014;
  hooks.thickness = 0.008;
  hooks.wrap = std::numbers::pi;
  hooks.pieces = {{"shank", {{0.0, 0.020}, {0.150, 0.020}, {0.150, 0.034}, {0.0, 0.034}}, 0.0},
                  {"shank again", {{0.100, 0.020}, {0.200, 0.020}, {0.200, 0.034}, {0.100, 0.034}}, 0.0}};
  std::vector<StairPart> stair;
  add_hooks(scene, 5e-5, stair);
  const double rim = 0.5 * std::numbers::pi * (0.034 * 0.034 - 0.020 * 0.020), bar = 0.200 * 0.014;
  const double each = 7850.0 * 0.008 * (rim + bar);
  const SectionMass plain = section_masses(scene, make_linkage(scene), stair)[0];
  CHECK(plain.mass == Approx(2 * each).epsilon(2e-3));  // the rim is drawn out by up to 0.05 mm of its 14
  // Half a ring's middle lies 4/3pi (R³ - r³) / (R² - r²) from the centre.
  const double off =
      4.0 / (3.0 * std::numbers::pi) * (std::pow(0.034, 3) - std::pow(0.020, 3)) / (0.034 * 0.034 - 0.020 * 0.020);
  CHECK(plain.centre.x == Approx((bar * 0.100 - rim * off) / (bar + rim)).epsilon(5e-3));
  CHECK(plain.centre.y == Approx(bar * 0.027 / (bar + rim)).epsilon(5e-3));

  hooks.roller = HookRoller{0.030, 0.012, 0.5 * std::numbers::pi};
  stair.clear();
  add_hooks(scene, 5e-5, stair);
  const double disc = 7850.0 * 0.25 * std::numbers::pi * 0.030 * 0.030 * 0.012;
  CHECK(section_masses(scene, make_linkage(scene), stair)[0].mass - plain.mass == Approx(2 * disc));
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

// Closed forms: a bar's polar moment is m (a² + b²) / 12, and the parallel-axis theorem adds m d² (any mechanics text).
TEST_CASE("mass: a board's inertia is that of a bar, through its middle", "[mechanism]") {
  const Scene scene = bare();
  const auto masses = section_masses(scene, make_linkage(scene),
                                     {box_part(PartKind::side_rail, 0, {0.2, -0.07}, {2.2, 0.07}, {{0.24, 0.28}})});
  CHECK(masses[0].inertia == Approx(masses[0].mass * (2.0 * 2.0 + 0.14 * 0.14) / 12.0).epsilon(1e-12));
}

TEST_CASE("mass: a section of two parts has the inertia of both about their common centre", "[mechanism]") {
  const Scene scene = bare();
  const auto masses = section_masses(scene, make_linkage(scene),
                                     {box_part(PartKind::side_rail, 0, {0.0, 0.0}, {2.0, 0.1}, {{0.0, 0.04}}),
                                      box_part(PartKind::tread, 0, {2.0, 0.0}, {2.1, 0.4}, {{-0.2, 0.2}})});
  const double density = stair_wood_density(scene), rail = density * 0.2 * 0.04, tread = density * 0.04 * 0.4;
  const Vec2 apart{2.05 - 1.0, 0.2 - 0.05};
  const double own = rail * (4.0 + 0.01) / 12.0 + tread * (0.01 + 0.16) / 12.0;
  CHECK(masses[0].inertia == Approx(own + rail * tread / (rail + tread) * dot(apart, apart)).epsilon(1e-12));
}

TEST_CASE("mass: the parallel-axis theorem holds for what is joined at one point", "[mechanism]") {
  const SectionMass bar{6.0, {1.0, 0.0}, 2.0}, far{1e9, {4.0, 4.0}, 0.0};
  // Beside so heavy a point the common centre is that point: a distance of 5 m off, to a part in 10⁸.
  CHECK(joined(bar, far).inertia == Approx(2.0 + 6.0 * 25.0).epsilon(1e-7));
  CHECK(joined(SectionMass{}, bar).inertia == 2.0);
}

TEST_CASE("mass: a disc's inertia is half its mass times its radius squared", "[mechanism]") {
  Scene scene = bare();
  Extra disc;
  disc.outline = {{0.5, 0.1}};
  disc.radius = 0.08;
  disc.mass = 2.0;
  scene.stair.extras = {disc};
  const auto masses = section_masses(scene, make_linkage(scene), {});
  CHECK(masses[0].mass == Approx(2.0));
  CHECK(masses[0].centre.x == Approx(0.5));
  CHECK(masses[0].inertia == Approx(0.5 * 2.0 * 0.08 * 0.08).epsilon(5e-3));  // the round is drawn within 0.1 mm
}

TEST_CASE("mass: wetter wood weighs more, by the supplement's formula", "[mechanism]") {
  Scene scene = bare();
  const double dry = stair_wood_density(scene);
  scene.stair.side_rails.moisture = 0.19;
  CHECK(stair_wood_density(scene) == Approx(wood_density(find_species("SPF")->gravity, 0.19)));
  CHECK(stair_wood_density(scene) > dry);
}

TEST_CASE("mass: a weighed section keeps its centre and scales its mass and inertia", "[mechanism]") {
  Scene scene = bare();
  const std::vector<StairPart> parts{box_part(PartKind::side_rail, 0, {0.0, -0.07}, {2.0, 0.07}, {{0.24, 0.28}}),
                                     box_part(PartKind::side_rail, 1, {0.0, -0.07}, {1.0, 0.07}, {{0.24, 0.28}})};
  const auto computed = section_masses(scene, make_linkage(scene), parts);
  scene.stair.weighed = {20.0, std::nullopt};
  const auto weighed = section_masses(scene, make_linkage(scene), parts);
  CHECK(weighed[0].mass == Approx(20.0));
  CHECK(weighed[0].centre.x == Approx(computed[0].centre.x));
  CHECK(weighed[0].inertia == Approx(computed[0].inertia * 20.0 / computed[0].mass));
  CHECK(weighed[1].mass == Approx(computed[1].mass));
}

TEST_CASE("mass: a chain's inertia is taken about the chain's own centre", "[mechanism]") {
  const Linkage linkage{{}, 2, {2.0, 2.0}, {}, {-1.0}};
  const double one = 3.0 * 4.0 / 12.0;  // a thin rod of 3 kg and 2 m
  const SectionMass chain = chain_mass(linkage, {{3.0, {1.0, 0.0}, one}, {3.0, {1.0, 0.0}, one}}, 0);
  CHECK(chain.inertia == Approx(6.0 * 16.0 / 12.0));  // a thin rod of 6 kg and 4 m
}
