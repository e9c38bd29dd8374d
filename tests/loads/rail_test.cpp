#include "sim/loads/rail.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <stdexcept>

#include "sim/trade/pipe.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

HookForces hang(double force, Interval stations) { return {"a test", {0.0, -force}, {0.5, 0.5}, stations}; }

// Two brackets far apart and one hook: a simple span, whose closed form is known.
Scene simple_span(double span) {
  Scene scene = testing::sample_scene();
  scene.rail.stations = {0.0, span};
  scene.rail.brackets.stations = {0.0, span};
  scene.rail.joints.clear();
  scene.stair.hooks.stations = {0.0};
  return scene;
}

}  // namespace

TEST_CASE("rail: one hook on a simple span bends the pipe as the closed form says", "[loads]") {
  const double span = 1.8, force = 900.0;
  const Scene scene = simple_span(span);
  const RailCase rail = rail_under(scene, {"a test", {0.0, -force}, {1.0}, {0.1, span - 0.1}});
  const Section section = tube_section(scene.rail.pipe.diameter, scene.rail.pipe.wall);
  const double weight = steel_tube_mass(scene.rail.pipe.diameter, scene.rail.pipe.wall) * 9.80665;
  const double moment = force * span / 4 + weight * span * span / 8;
  CHECK(rail.stress == Approx(moment / section.modulus).epsilon(1e-9));  // refined to half the digits, flat top squared
  CHECK(rail.peaks.sagging.position == Approx(span / 2).margin(1e-6));
  const double stiffness = kSteelElasticity * section.second_moment;
  const double sag = force * std::pow(span, 3) / (48 * stiffness) + 5 * weight * std::pow(span, 4) / (384 * stiffness);
  CHECK(rail.peaks.down.value == Approx(sag).epsilon(1e-9));
  CHECK(rail.hinged_stress == Approx(rail.design_stress).epsilon(1e-9));  // it is hinged at both brackets anyway
  CHECK(rail.design_stress > rail.stress);
}

TEST_CASE("rail: the series holds nothing greater than the peaks, and comes near them", "[loads]") {
  const Scene scene = testing::sample_scene();
  const RailCase rail = rail_under(scene, hang(1500.0, {0.55, 7.0}), 2000);
  double stress = 0.0, sag = 0.0;
  for (const RailPlace& place : rail.places) {
    stress = std::max(stress, place.stress);
    sag = std::max(sag, place.most_sag);
    REQUIRE(place.sag.size() == 2);
    CHECK(std::max(place.sag[0], place.sag[1]) <= place.most_sag * (1 + 1e-9));
  }
  CHECK(stress <= rail.stress * (1 + 1e-12));
  CHECK(stress == Approx(rail.stress).epsilon(1e-3));  // 2000 places over eight spans: a flat top seen from 2 mm off
  CHECK(sag == Approx(rail.peaks.down.value).epsilon(1e-3));
  CHECK(rail.hinged_stress > rail.design_stress);
}

TEST_CASE("rail: a force outward bends the round pipe as much as one downward", "[loads]") {
  const Scene scene = testing::sample_scene();
  const RailCase down = rail_under(scene, hang(800.0, {1.0, 6.0}), 10);
  HookForces outward = hang(800.0, {1.0, 6.0});
  outward.total = {480.0, -640.0};
  CHECK(rail_under(scene, outward, 10).stress == Approx(down.stress).epsilon(1e-12));
}

TEST_CASE("rail: bracket screws hold what turns the plate about its lower edge", "[loads]") {
  Scene scene = testing::sample_scene();
  scene.rail.brackets.screws = Screws{4, 0.008, 0.050, true, "SPF"};
  const RailCase rail = rail_under(scene, hang(1500.0, {0.55, 7.0}), 10);
  const BracketLoad load = worst_bracket(scene, rail);
  const double turning = -load.force.y * scene.rail.brackets.projection;
  CHECK(load.force.x == 0.0);
  CHECK(2 * load.pull * 0.75 * scene.rail.brackets.plate_height == Approx(turning));
  CHECK(4 * load.shear == Approx(-load.force.y));
  CHECK(-load.force.y > 0.5 * 1500.0);  // no less than one hook straight over a bracket
  CHECK(-load.force.y < 1500.0 + 100.0);
  CHECK(load.bending == Approx(-load.force.y * 0.069));  // projection less the plate's thickness
}

TEST_CASE("rail: an outlined bracket is measured by the pieces that touch its wall", "[loads]") {
  Scene scene = testing::sample_scene();
  const RailCase rail = rail_under(scene, hang(1500.0, {0.55, 7.0}), 10);
  scene.rail.brackets.screws = Screws{4, 0.008, 0.050, true, "SPF"};
  const BracketLoad saddle = worst_bracket(scene, rail);
  scene.rail.brackets.shape = BracketShape::outline;
  scene.rail.brackets.pieces = {
      {"plate", {{-0.075, -0.100}, {-0.069, -0.100}, {-0.069, -0.010}, {-0.075, -0.010}}, 0.0, 0.06},
      {"arm", {{0.0, -0.055}, {-0.069, -0.055}}, 0.006, 0.012}};
  CHECK(worst_bracket(scene, rail).pull == Approx(saddle.pull));
}

TEST_CASE("rail: the pipe's strength is its grade's yield over the stated factor", "[loads]") {
  const PipeStrength strength = pipe_strength(testing::sample_scene().rail.pipe);
  CHECK(strength.allowable == Approx(find_pipe_grade("A")->yield / kSteelFactor));
  CHECK(strength.design.modulus < strength.listed.modulus);
}

TEST_CASE("rail: what cannot be reckoned is refused", "[loads]") {
  Scene scene = testing::sample_scene();
  CHECK_THROWS_AS(rail_under(scene, {"a test", {0, -1}, {1.0}, {1, 2}}), std::invalid_argument);
  CHECK_THROWS_AS(rail_under(scene, hang(1.0, {2.0, 1.0})), std::invalid_argument);
  scene.rail.brackets.stations.resize(1);
  CHECK_THROWS_AS(rail_under(scene, hang(1.0, {1.0, 2.0})), std::invalid_argument);
}

namespace {

// Greatest moment of any span by itself, by looking: 4000 positions, each span solved as a beam of two supports.
double scanned_hinged_moment(const Beam& beam, const std::vector<PointLoad>& group, Interval travel) {
  double most = 0.0;
  for (int k = 0; k <= 4000; ++k) {
    const auto loads = group_at(group, travel.lo + travel.length() * k / 4000.0);
    for (std::size_t i = 0; i + 1 < beam.supports.size(); ++i) {
      const Interval span{beam.supports[i], beam.supports[i + 1]};
      std::vector<PointLoad> on;
      for (const PointLoad& load : loads)
        if (span.contains(load.at)) on.push_back(load);
      const Beam simple{{span.lo, span.hi}, span, beam.stiffness, {{span, beam.spread.front().per_length}}};
      most = std::max(most, beam_peaks(solve_beam(simple, on)).sagging.value);
    }
  }
  return most;
}

Scene jointed(std::vector<PipeJoint> joints) {
  Scene scene = testing::sample_scene();
  scene.rail.joints = std::move(joints);
  return scene;
}

}  // namespace

TEST_CASE("rail: spans hinged over their brackets bend as much as a fine scan says", "[loads]") {
  std::mt19937 random(41);
  std::uniform_real_distribution<double> gap(0.4, 1.4);
  for (int draw = 0; draw < 5; ++draw) {
    Scene scene = testing::sample_scene();
    scene.rail.brackets.stations = {0.3};
    for (int i = 0; i < 4; ++i)
      scene.rail.brackets.stations.push_back(scene.rail.brackets.stations.back() + gap(random));
    scene.rail.stations = {0.3, scene.rail.brackets.stations.back()};
    scene.rail.joints.clear();
    const Interval travel{0.6, scene.rail.stations.hi - 0.3};
    const RailCase rail = rail_under(scene, {"a test", {0.0, -1500.0}, {0.3, 0.7}, travel}, 1);
    const std::vector<PointLoad> group{{-0.261, 450.0}, {0.261, 1050.0}};
    const double scanned = scanned_hinged_moment(rail_beam(scene.rail), group, travel);
    const double exact = rail.hinged_stress * pipe_strength(scene.rail.pipe).design.modulus;
    CHECK(scanned <= exact * (1 + 1e-12));
    CHECK(scanned == Approx(exact).epsilon(2e-3));  // 4000 positions, each a millimetre or two from the next
  }
}

TEST_CASE("rail: a coupling is looked at where its pipes enter it, at the thread's root", "[loads]") {
  const Scene scene = jointed({{3.750, 0.042, 0.060}});
  const RailCase rail = rail_under(scene, hang(1500.0, {0.55, 7.0}), 10);
  REQUIRE(rail.joints.size() == 1);
  const JointPeak& joint = rail.joints.front();
  CHECK(joint.kind == JointKind::coupling);
  CHECK(joint.station == 3.750);
  CHECK(std::abs(joint.at - 3.750) == Approx(0.030));
  CHECK(joint.moment == std::max(joint.sagging.value, joint.hogging.value));
  CHECK(joint.sagging.value <= rail.peaks.sagging.value * (1 + 1e-12));
  CHECK(joint.hogging.value <= rail.peaks.hogging.value * (1 + 1e-12));
  const double depth = 0.8 * 0.0254 / 11.5;
  CHECK(*joint.stress == Approx(joint.moment / tube_section(0.0334 - 2 * depth, 0.0034 - depth).modulus));
  CHECK(*joint.design_stress > *joint.stress);
}

TEST_CASE("rail: a joint's moment is that of a fine scan of the stair's stations", "[loads]") {
  for (const double station : {0.9, 2.02, 3.75, 5.1}) {
    const Scene scene = jointed({{station, 0.0334, 0.060}});  // flush: looked at where it is
    const RailCase rail = rail_under(scene, hang(1500.0, {0.55, 7.0}), 1);
    const Beam beam = rail_beam(scene.rail);
    const std::vector<PointLoad> group{{-0.261, 750.0}, {0.261, 750.0}};
    double sagging = 0.0, hogging = 0.0;
    for (int k = 0; k <= 8000; ++k) {
      const double moment = moment_at(solve_beam(beam, group_at(group, 0.55 + 6.45 * k / 8000.0)), station);
      sagging = std::max(sagging, moment);
      hogging = std::max(hogging, -moment);
    }
    CHECK(sagging <= rail.joints.front().sagging.value * (1 + 1e-12));
    CHECK(hogging <= rail.joints.front().hogging.value * (1 + 1e-12));
    CHECK(rail.joints.front().sagging.value ==
          Approx(sagging).margin(750.0 * 6.45 / 8000.0));  // a kink, half a step off
    CHECK(rail.joints.front().hogging.value == Approx(hogging).margin(750.0 * 6.45 / 8000.0));
  }
}

TEST_CASE("rail: of a flush joint, and of a wall too thin for a thread, no stress is claimed", "[loads]") {
  Scene scene = jointed({{3.750, 0.0334, 0.060}});
  const JointPeak flush = rail_under(scene, hang(1500.0, {0.55, 7.0}), 1).joints.front();
  CHECK(flush.kind == JointKind::flush);
  CHECK(flush.at == 3.750);
  CHECK(flush.moment > 0.0);
  CHECK_FALSE(flush.stress);
  CHECK_FALSE(flush.design_stress);
  scene = jointed({{3.750, 0.042, 0.060}});
  scene.rail.pipe.wall = 0.0015;
  CHECK_FALSE(rail_under(scene, hang(1500.0, {0.55, 7.0}), 1).joints.front().stress);
}

TEST_CASE("rail: more load and more joints never make anything less", "[loads]") {
  std::mt19937 random(42);
  std::uniform_real_distribution<double> place(0.3, 7.2), force(100.0, 3000.0);
  for (int draw = 0; draw < 12; ++draw) {
    Scene scene = jointed({{place(random), 0.042, 0.060}, {place(random), 0.0334, 0.060}});
    const double light = force(random), heavy = light + force(random);
    const RailCase less = rail_under(scene, hang(light, {0.55, 7.0}), 5);
    const RailCase more = rail_under(scene, hang(heavy, {0.55, 7.0}), 5);
    CHECK(more.stress >= less.stress);
    CHECK(more.design_stress >= less.design_stress);
    CHECK(more.hinged_stress >= less.hinged_stress);
    CHECK(more.peaks.down.value >= less.peaks.down.value);
    for (std::size_t i = 0; i < less.joints.size(); ++i) CHECK(more.joints[i].moment >= less.joints[i].moment);
    for (std::size_t i = 0; i < less.peaks.press.size(); ++i)
      CHECK(more.peaks.press[i].value >= less.peaks.press[i].value);
    scene.rail.joints.push_back({place(random), 0.042, 0.060});
    const RailCase third = rail_under(scene, hang(light, {0.55, 7.0}), 5);
    CHECK(third.stress >= less.stress);
    CHECK(third.hinged_stress >= less.hinged_stress);
    double before = 0.0, after = 0.0;
    for (const JointPeak& joint : less.joints) before = std::max(before, joint.moment);
    for (const JointPeak& joint : third.joints) after = std::max(after, joint.moment);
    CHECK(after >= before);
  }
}
