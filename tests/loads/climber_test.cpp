#include "sim/loads/climber.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "sim/trade/us_units.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

struct Climbed {
  Scene scene;
  Model model;
  ClimberReport report;
};

Climbed climbed(const Scene& scene) {
  const Model model = build_model(scene);
  return {scene, model, climb(scene, model)};
}

double stair_mass(const Model& model) {
  double sum = 0.0;
  for (const SectionMass& section : model.masses) sum += section.mass;
  return sum;
}

}  // namespace

TEST_CASE("climber: hooks and casters carry person and stair between them, from every tread", "[loads]") {
  const Climbed all = climbed(testing::sample_scene());
  REQUIRE(all.report.places.size() >= 8);
  const double total = (all.report.mass + stair_mass(all.model)) * kGravity;
  for (const ClimberPlace& place : all.report.places) {
    CHECK(place.hooks + place.floor == Approx(total).epsilon(1e-12));
    CHECK(place.worst_hook >= 0.5 * place.hooks);
    CHECK(place.worst_hook <= place.hooks * (1.0 + 1e-12));
    CHECK(place.worst_caster >= 0.5 * place.floor);
    CHECK(place.worst_caster <= place.floor * (1.0 + 1e-12));
  }
  for (std::size_t i = 1; i < all.report.places.size(); ++i) {
    CHECK(all.report.places[i].height > all.report.places[i - 1].height);
    CHECK(all.report.places[i].hooks > all.report.places[i - 1].hooks);
  }
}

// Closed form of a simple beam, with the stair's own mass left out by weighing it as next to nothing.
TEST_CASE("climber: a stair of no weight bends as P a b / L across its slope", "[loads]") {
  Scene scene = testing::one_section_scene();
  scene.stair.weighed = {1e-9};
  Climbed all = climbed(scene);
  all.model.masses[0].mass = 0.0;
  const ClimberReport report = climb(scene, all.model);
  const double length = scene.stair.casters.along, force = report.mass * kGravity * std::sin(all.model.working_lean);
  for (const ClimberPlace& place : report.places) {
    const double a = place.along, b = length - a;
    if (a <= 0.0 || b <= 0.0) continue;
    CHECK(place.peaks.sagging.value == Approx(force * a * b / length).epsilon(1e-9));
    CHECK(report.bending_stress(place) == Approx(force * a * b / length / report.side_rail_modulus).epsilon(1e-9));
    CHECK(report.shear_stress(place) ==
          Approx(1.5 * force * std::max(a, b) / length / report.side_rail_area).epsilon(1e-9));
  }
}

TEST_CASE("climber: the joint passes on the beam's moment, and pin and hinge make the couple", "[loads]") {
  const Climbed all = climbed(testing::sample_scene());
  const Lock& lock = all.scene.stair.locks[0];
  for (const ClimberPlace& place : all.report.places) {
    REQUIRE(place.joints.size() == 1);
    const JointLoad& joint = place.joints[0];
    CHECK(joint.moment > 0.0);
    CHECK(joint.arm == Approx(std::hypot(0.25 * lock.length, 0.5 * 0.140 + 0.012)));
    CHECK(joint.pin * joint.arm == Approx(joint.moment));
    CHECK(joint.hinge_force >= joint.pin);
    CHECK(joint.hinge_unlocked > joint.hinge_force);  // the ends' arm is shorter than the pin's
    // Both sides together; the peak may stand elsewhere, and the hinge lies off the rails' middle line.
    CHECK(2 * joint.moment < place.peaks.sagging.value * 1.1);
  }
}

TEST_CASE("climber: one caster in the air and the foot aside tip the load onto one hook", "[loads]") {
  const Climbed all = climbed(testing::sample_scene());
  const ClimberPlace& top = all.report.places.back();
  // Hooks at 0.261, casters at 0.310, the foot at 0.150 from the middle: moments about the middle line.
  const double aside = all.report.mass * kGravity * 0.150 / (2 * 0.261);
  CHECK(top.worst_hook == Approx(std::min(top.hooks, 0.5 * top.hooks + top.floor * 0.310 / (2 * 0.261) + aside)));
}

TEST_CASE("climber: a tread is a simple beam between the side rails", "[loads]") {
  const Climbed all = climbed(testing::sample_scene());
  REQUIRE(all.report.tread);
  const double span = 0.560 - 2 * 0.038, force = 136.077711 * kGravity;
  CHECK(all.report.tread->span == Approx(span));
  CHECK(all.report.tread->moment == Approx(force * span / 4).epsilon(0.01));  // its own 1 kg adds some 0.4 %
  CHECK(all.report.tread->stress == Approx(all.report.tread->moment / (0.140 * 0.038 * 0.038 / 6)));
  Scene bare = testing::sample_scene();
  bare.stair.treads.reset();
  const Climbed without = climbed(bare);
  CHECK_FALSE(without.report.tread);
  CHECK(without.report.places.size() > 50);
}

// NDS values from memory: SPF No. 2, 875 psi times C_F 1.3 for a 2x6.
TEST_CASE("climber: the side rails' strength is the table's with the size factor", "[loads]") {
  const WoodStrength wood = wood_strength(testing::sample_scene());
  CHECK(wood.bending == Approx(875 * 1.3 * 6894.757293168));
  CHECK_FALSE(wood.assumed);
  Scene unnamed = testing::sample_scene();
  unnamed.stair.side_rails.species = "";
  CHECK(wood_strength(unnamed).assumed);
}
