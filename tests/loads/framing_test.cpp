#include "sim/loads/framing.h"

#include <catch2/catch.hpp>
#include <random>

#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

Scene framed(std::optional<double> every, std::optional<double> first,
             FramingDirection direction = FramingDirection::out) {
  Scene scene = testing::sample_scene();
  scene.ceiling_framing = Framing{"truss", every, "SPF", direction, first};
  scene.loft.framing = Framing{"2x10", every, "SPF", direction, first};
  return scene;
}

FramedPoint ceiling_at(double out, double station, double force = 1000.0) {
  return {"ceiling point", true, out, station, force, "raising"};
}

std::string newtons(const Scene&, double force) { return std::to_string(std::lround(force)) + " N"; }

}  // namespace

TEST_CASE("framing: on a member it gets everything", "[loads]") {
  const auto loads = framing_loads(framed(0.6, 0.4), {ceiling_at(2.5, 4.0 + 0.015)});
  REQUIRE(loads.size() == 1);
  CHECK(loads[0].place == FramingPlace::on_member);
  CHECK(loads[0].off == Approx(0.015));
  REQUIRE(loads[0].members.size() == 1);
  CHECK(loads[0].members[0].at == Approx(4.0));
  CHECK(loads[0].members[0].force == 1000.0);
}

// Lever rule, closed form: a third of the way from one to the next, two thirds stay on the nearer.
TEST_CASE("framing: between two members they share by the lever", "[loads]") {
  const auto loads = framing_loads(framed(0.6, 0.4), {ceiling_at(2.5, 4.2)});
  CHECK(loads[0].place == FramingPlace::between_members);
  CHECK(loads[0].off == Approx(0.2));
  REQUIRE(loads[0].members.size() == 2);
  CHECK(loads[0].members[0].at == Approx(4.0));
  CHECK(loads[0].members[0].force == Approx(2000.0 / 3.0));
  CHECK(loads[0].members[1].force == Approx(1000.0 / 3.0));
}

TEST_CASE("framing: members along the rail are placed by how far out they are", "[loads]") {
  const auto loads = framing_loads(framed(0.6, 0.1, FramingDirection::along_rail), {ceiling_at(2.5, 4.2)});
  CHECK(loads[0].place == FramingPlace::on_member);
  CHECK(loads[0].members[0].at == Approx(2.5));
}

TEST_CASE("framing: shares add up to the force and lie a spacing apart", "[loads]") {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> every(0.3, 0.8), first(0.0, 5.0), at(0.0, 7.0);
  for (int i = 0; i < 500; ++i) {
    const double spacing = every(random);
    const FramingLoad load = framing_loads(framed(spacing, first(random)), {ceiling_at(2.0, at(random))})[0];
    double sum = 0.0;
    for (const MemberShare& member : load.members) sum += member.force;
    CHECK(sum == Approx(1000.0));
    CHECK(load.off <= 0.5 * spacing + 1e-12);
    if (load.members.size() == 2) {
      CHECK(std::abs(load.members[0].at - load.members[1].at) == Approx(spacing));
      CHECK(load.members[0].force >= load.members[1].force);
    }
  }
}

TEST_CASE("framing: without a spacing, or one member's place, nothing is said of it", "[loads]") {
  for (const Scene& scene : {framed(std::nullopt, 0.4), framed(0.6, std::nullopt), testing::sample_scene()}) {
    const FramingLoad load = framing_loads(scene, {ceiling_at(2.5, 4.0)})[0];
    CHECK(load.place == FramingPlace::not_said);
    CHECK(load.members.empty());
    CHECK(framing_words(scene, load, newtons).find("is not said") != std::string::npos);
  }
}

TEST_CASE("framing: brackets on the loft's edge hang from its joists, others do not", "[loads]") {
  Scene scene = framed(0.43, 0.3);
  const auto points = brackets_framed(scene, 500.0, "one person");  // faces at 975 - 75 = 900, the loft's edge
  REQUIRE(points.size() == scene.rail.brackets.stations.size());
  for (const FramingLoad& load : framing_loads(scene, points)) CHECK(load.place == FramingPlace::on_member);
  scene.loft.edge = 0.850;
  CHECK(brackets_framed(scene, 500.0, "one person").empty());
}

TEST_CASE("framing: words name the members, the distance and the shares, and judge nothing", "[loads]") {
  const Scene scene = framed(0.6, 0.4);
  const std::string text = framing_words(scene, framing_loads(scene, {ceiling_at(2.5, 4.2)})[0], newtons);
  CHECK(text.find("between two of the trusses, 200 mm off the nearer one") != std::string::npos);
  CHECK(text.find("667 N on the one at 4") != std::string::npos);
  CHECK(kFramingCaution.find("a licensed engineer must accept") != std::string_view::npos);
}
