#include "sim/mechanism/stair_parts.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "sim/mechanism/standing.h"
#include "tests/support/sample_scene.h"
#include "tests/support/scene_fault.h"

using namespace stowpath;
using stowpath::testing::sample_scene;

namespace {

struct Built {
  Linkage linkage;
  double lean = 0.0;
  std::vector<StairPart> parts;

  explicit Built(const Scene& scene) : linkage(make_linkage(scene)) {
    lean = stand(scene, linkage).lean;
    add_side_rails(scene, linkage, lean, parts);
    add_joints(scene, linkage, parts);
    add_casters(scene, linkage, lean, parts);
    add_handrails(scene, linkage, parts);
    add_extras(scene, parts);
  }
  const StairPart& named(const std::string& name, int nth = 0) const {
    for (const StairPart& part : parts)
      if (part.name == name && nth-- == 0) return part;
    throw std::out_of_range(name);
  }
  bool has(const std::string& name) const {
    return std::any_of(parts.begin(), parts.end(), [&](const StairPart& part) { return part.name == name; });
  }
  std::vector<Vec2> in_room(const StairPart& part) const {
    return placed(part.outline, place_sections(linkage, {0.0, lean, {}})[static_cast<std::size_t>(part.section)]).core;
  }
};

void check_stretch(Interval stretch, double lo, double hi) {
  CHECK(stretch.lo == Approx(lo).margin(1e-15));
  CHECK(stretch.hi == Approx(hi).margin(1e-15));
}

Scene with_handrails(Sides sides) {
  Scene scene = sample_scene();
  scene.stair.handrails = Handrails{0.600, 0.040, sides, 0.500};
  return scene;
}

}  // namespace

TEST_CASE("stair: two side rails a section, from past the pivot to the joint and on to the foot", "[mechanism]") {
  const Built built(sample_scene());
  const StairPart& upper = built.named("side rail");
  CHECK(upper.section == 0);
  CHECK(upper.outline.core[0] == Vec2{0.100, -0.070});
  CHECK(upper.outline.core[2] == Vec2{1.790, 0.070});
  REQUIRE(upper.stations.size() == 2);
  check_stretch(upper.stations[0], -0.280, -0.242);
  check_stretch(upper.stations[1], 0.242, 0.280);
  CHECK(built.named("side rail", 1).section == 1);
}

TEST_CASE("stair: a level foot is level in the working pose and passes through the datum line's end", "[mechanism]") {
  const Built built(sample_scene());
  const std::vector<Vec2> corners = built.in_room(built.named("side rail", 1));
  const auto X_W = place_sections(built.linkage, {0.0, built.lean, {}});
  const double foot = (X_W[1] * Vec2{1.440, 0.0}).y;
  CHECK(corners[1].y == Approx(foot).margin(1e-14));  // rounding of sums of 3 m
  CHECK(corners[2].y == Approx(foot).margin(1e-14));
}

TEST_CASE("stair: a square foot is square to the section", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.side_rails.level_foot = false;
  const Built built(scene);
  CHECK(built.named("side rail", 1).outline.core[1] == Vec2{1.440, -0.070});
  CHECK(built.named("side rail", 1).outline.core[2] == Vec2{1.440, 0.070});
}

TEST_CASE("stair: a section too short for its side rails is refused", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.above_pivot = -1.8;
  const Linkage linkage = make_linkage(scene);
  std::vector<StairPart> parts;
  CHECK(testing::fault_of([&] { add_side_rails(scene, linkage, 0.5, parts); }).problem ==
        "a section of 1.790 m is too short for its side rails");
}

TEST_CASE("stair: scab, block and pin lie outside the side rails, across the joint", "[mechanism]") {
  const Built built(sample_scene());
  const StairPart &scab = built.named("scab"), &block = built.named("spacer block"), &pin = built.named("lock pin");
  check_stretch(scab.stations[1], 0.318, 0.356);  // 280 mm half width, 38 mm block, 38 mm scab
  CHECK(scab.outline.core[0].x == Approx(1.790 - 0.450).margin(1e-15));
  CHECK(scab.outline.core[2].x == Approx(1.790 + 0.450).margin(1e-15));
  check_stretch(block.stations[1], 0.280, 0.318);
  CHECK(block.outline.core[2].x == 1.790);  // on the upper half only
  check_stretch(pin.stations[1], 0.242, 0.356);
  CHECK(pin.outline.core[0].x == Approx(1.790 + 0.225).margin(1e-15));
  CHECK(pin.outline.radius == 0.005);
  CHECK(pin.only_pinned);
  for (const StairPart* part : {&scab, &block, &pin}) {
    CHECK(part->section == 0);
    CHECK(part->hinge == 0);
  }
}

TEST_CASE("stair: without a spacer there is no block and the scab lies on the side rail", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.locks[0].spacer = 0.0;
  const Built built(scene);
  CHECK_FALSE(built.has("spacer block"));
  check_stretch(built.named("scab").stations[1], 0.280, 0.318);
}

TEST_CASE("stair: the hinge's barrel is on its axis and no larger than its stand-off", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.hinges[0].offset = 0.006;
  const Built built(scene);
  CHECK(built.named("hinge").outline.core[0].y == Approx(-0.076).margin(1e-15));
  CHECK(built.named("hinge").outline.radius == 0.006);
}

TEST_CASE("stair: caster plates lie between rail and wheel, clear of the floor", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.casters.block = 0.004;
  const Built built(scene);
  check_stretch(built.named("caster block").stations[0], -0.284, -0.280);
  check_stretch(built.named("caster plate").stations[1], 0.284, 0.292);
  for (const Vec2 corner : built.in_room(built.named("caster plate"))) CHECK(corner.y >= 0.0375 - 1e-14);
}

TEST_CASE("stair: a wheel inside the side rails has its plate on the inner face", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.casters.stations = {-0.200, 0.200};
  const Built built(scene);
  check_stretch(built.named("caster plate").stations[0], -0.242, -0.234);
  check_stretch(built.named("caster plate").stations[1], 0.234, 0.242);
}

TEST_CASE("stair: handrails follow the front face on the sides given, with their posts", "[mechanism]") {
  const Built built(with_handrails(Sides::left));
  const StairPart& bar = built.named("handrail");
  // 40 mm round at 670 mm, cut off square 100 mm short of the side rail's two ends (100 and 1790 mm).
  CHECK(norm(bar.outline.core[0] - Vec2{0.200, 0.650}) < 1e-15);
  CHECK(norm(bar.outline.core[2] - Vec2{1.690, 0.690}) < 1e-15);
  CHECK(bar.outline.radius == 0.0);
  REQUIRE(bar.stations.size() == 1);
  check_stretch(bar.stations[0], -0.281, -0.241);  // 40 mm round the side rail's middle at -261 mm
  CHECK(Built(with_handrails(Sides::both)).named("handrail").stations.size() == 2);
  CHECK(Built(with_handrails(Sides::right)).named("handrail").stations[0].lo > 0.0);
  // Upper bar from 220 to 1670 mm: posts at 220, 720 and 1220 mm.
  CHECK(std::count_if(built.parts.begin(), built.parts.end(),
                      [](const StairPart& part) { return part.name == "handrail post" && part.section == 0; }) == 3);
}

TEST_CASE("stair: extras are taken as given, and refused where they are none", "[mechanism]") {
  Scene scene = sample_scene();
  CHECK(Built(scene).named("gate hinge").stations[0] == Interval{-0.280, -0.240});
  scene.stair.extras[0].section = 3;
  CHECK(testing::fault_of([&] { Built{scene}; }).problem == "there is no section 3");
  scene.stair.extras[0].section = 1;
  std::reverse(scene.stair.extras[0].outline.begin(), scene.stair.extras[0].outline.end());
  const Diagnostic fault = testing::fault_of([&] { Built{scene}; });
  CHECK(fault.key == "stair.extras[0].outline");
  CHECK(fault.at.line == 20);  // its nearest ancestor that the file places
}
