#include "sim/mechanism/haul.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/mechanism/mass.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

// The sample stair, its lower section's centre of mass at a chosen point.
struct Hauled {
  Linkage linkage;
  Standing standing;
  LowerChain chain;
  Configuration start;

  explicit Hauled(Vec2 centre) {
    const Scene scene = testing::sample_scene();
    linkage = make_linkage(scene);
    standing = stand(scene, linkage);
    chain = lower_chain(linkage, standing, {{20.0, {0.9, 0.0}}, {14.0, centre}}, 0);
    start.lean = standing.lean;
  }
  std::vector<Segment> to(double degrees) const { return haul(linkage, chain, start, degrees * kDegree); }
  double below(const Configuration& c) const { return section_leans(linkage, c)[1]; }
  Vec2 axle(const Configuration& c) const { return place_sections(linkage, c)[1] * chain.rule.axle; }
};

void check_joined(const std::vector<Segment>& segments) {
  for (std::size_t i = 1; i < segments.size(); ++i) {
    CHECK(segments[i].from.lean == segments[i - 1].to.lean);
    CHECK(segments[i].from.folds == segments[i - 1].to.folds);
  }
}

}  // namespace

TEST_CASE("haul: the foot drags, leaves the floor at full stretch, settles plumb and hangs", "[mechanism]") {
  const Hauled hauled({0.765, 0.0});
  REQUIRE(hauled.chain.plumb_lean < hauled.chain.stretch_lean);  // its mass is nearer the hinge than its axle
  const std::vector<Segment> segments = hauled.to(70);
  REQUIRE(segments.size() == 3);
  check_joined(segments);
  CHECK(segments[0].kind == SegmentKind::drag);
  CHECK(hauled.axle(segments[0].to).y == Approx(hauled.standing.axle_height).margin(1e-12));
  // At full stretch 1e-15 m of height are 4e-8 rad of lean.
  CHECK(hauled.below(segments[0].to) == Approx(hauled.chain.stretch_lean).margin(2e-7));
  CHECK(segments[1].from.lean == segments[1].to.lean);
  CHECK(hauled.below(segments[1].to) == Approx(hauled.chain.plumb_lean).margin(1e-14));
  CHECK(segments[2].to.lean == 70 * kDegree);
  CHECK(hauled.below(segments[2].to) == Approx(hauled.chain.plumb_lean).margin(1e-14));
}

TEST_CASE("haul: a chain that is plumb before full stretch leaves the floor there, without settling", "[mechanism]") {
  const Hauled hauled({0.765, -0.070});
  REQUIRE(hauled.chain.plumb_lean > hauled.chain.stretch_lean);
  const std::vector<Segment> segments = hauled.to(70);
  check_joined(segments);
  CHECK(hauled.below(segments[0].to) == Approx(hauled.chain.plumb_lean).margin(1e-12));
  const Configuration& end = segments.back().to;
  CHECK(hauled.below(end) == Approx(hauled.chain.plumb_lean).margin(1e-12));
  CHECK(hauled.axle(end).y > hauled.standing.axle_height + 0.3);
}

TEST_CASE("haul: hanging, the lower section's centre of mass stays straight below the hinge", "[mechanism]") {
  const Vec2 centre{0.765, 0.010};
  const Hauled hauled(centre);
  const Segment hang = hauled.to(80).back();
  for (int n = 0; n <= 100; ++n) {
    const Configuration c = at(hauled.linkage, hang, n / 100.0);
    const auto X_W = place_sections(hauled.linkage, c);
    const double off = (X_W[1] * centre).x - (X_W[0] * hauled.linkage.distal(0)).x;
    CHECK(off == Approx(0.0).margin(1e-14));
    CHECK(hauled.below(c) == Approx(hauled.chain.plumb_lean).margin(1e-14));
  }
}

TEST_CASE("haul: the foot never sinks into the floor on the way", "[mechanism]") {
  const Hauled hauled({0.765, 0.0});
  for (const Segment& segment : hauled.to(80))
    for (int n = 0; n <= 100; ++n)
      CHECK(hauled.axle(at(hauled.linkage, segment, n / 100.0)).y > hauled.standing.axle_height - 1e-12);
}

TEST_CASE("haul: a target short of lift-off only drags, and the rest goes on from there", "[mechanism]") {
  const Hauled hauled({0.765, 0.0});
  const std::vector<Segment> first = hauled.to(40);
  REQUIRE(first.size() == 1);
  CHECK(first[0].kind == SegmentKind::drag);
  CHECK(foot_stands(hauled.linkage, hauled.chain, first[0].to));
  const std::vector<Segment> rest = haul(hauled.linkage, hauled.chain, first[0].to, 70 * kDegree);
  REQUIRE(rest.size() == 3);
  CHECK(rest[0].kind == SegmentKind::drag);
  const Configuration at_once = hauled.to(70).back().to, in_two = rest.back().to;
  CHECK(at_once.folds[0] == Approx(in_two.folds[0]).margin(1e-14));
}

TEST_CASE("haul: a raised chain that is not plumb settles before it hangs", "[mechanism]") {
  const Hauled hauled({0.765, 0.0});
  const Configuration raised{0.0, 60 * kDegree, {}};  // lifted straight, then unpinned
  const std::vector<Segment> segments = haul(hauled.linkage, hauled.chain, raised, 75 * kDegree);
  REQUIRE(segments.size() == 2);
  CHECK(segments[0].to.lean == raised.lean);
  CHECK(hauled.below(segments[0].to) == Approx(hauled.chain.plumb_lean).margin(1e-14));
}

TEST_CASE("haul: two sections below the hinge drag and hang as one", "[mechanism]") {
  Scene scene = testing::sample_scene();
  scene.stair.sections = {1.790, 0.700, 0.740};
  scene.stair.casters.along = 0.800;
  scene.stair.hinges.push_back(scene.stair.hinges[0]);
  scene.stair.locks.push_back(scene.stair.locks[0]);
  const Linkage linkage = make_linkage(scene);
  const Standing standing = stand(scene, linkage);
  const LowerChain chain =
      lower_chain(linkage, standing, {{20.0, {0.9, 0.0}}, {7.0, {0.35, 0.0}}, {7.0, {0.4, 0.0}}}, 0);
  CHECK(chain.rule.axle.x == Approx(1.5).margin(1e-14));
  Configuration start;
  start.lean = standing.lean;
  const std::vector<Segment> segments = haul(linkage, chain, start, 60 * kDegree);
  const Configuration half = at(linkage, segments[0], 0.5);
  CHECK((place_sections(linkage, half)[2] * Vec2{0.800, 0.0}).y == Approx(standing.axle_height).margin(1e-12));
}
