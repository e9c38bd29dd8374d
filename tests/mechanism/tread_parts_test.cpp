#include "sim/mechanism/tread_parts.h"

#include <catch2/catch.hpp>

#include <cmath>

#include "sim/mechanism/standing.h"
#include "tests/support/sample_scene.h"
#include "tests/support/scene_fault.h"

using namespace stowpath;
using stowpath::testing::sample_scene;

namespace {

struct Laid {
  Linkage linkage;
  double lean = 0.0;
  std::vector<StairPart> treads;
  std::vector<BuildFault> faults;

  explicit Laid(const Scene& scene) : linkage(make_linkage(scene)) {
    lean = stand(scene, linkage).lean;
    add_treads(scene, linkage, lean, treads, faults);
  }
  RoundedPolygon in_room(const StairPart& tread) const {
    return placed(tread.outline, place_sections(linkage, {0.0, lean, {}})[static_cast<std::size_t>(tread.section)]);
  }
};

}  // namespace

TEST_CASE("treads: equal rises take the fewest of at most 250 mm, the deck being the last", "[mechanism]") {
  const std::vector<double> heights = tread_heights(sample_scene());
  REQUIRE(heights.size() == 11);  // 2950 / 250 = 11.8: 12 rises
  for (std::size_t k = 0; k < heights.size(); ++k)
    CHECK(heights[k] == Approx(2.950 / 12.0 * static_cast<double>(k + 1)).margin(1e-14));
}

TEST_CASE("treads: a climb of exactly twelve 250 mm rises is not made thirteen by rounding", "[mechanism]") {
  Scene scene = sample_scene();
  scene.loft.deck = 3.000;
  scene.floor.level = 0.0;
  CHECK(tread_heights(scene).size() == 11);
  scene.loft.deck = 3.001;
  CHECK(tread_heights(scene).size() == 12);
}

TEST_CASE("treads: rises count from the floor's level, and a given first tread is kept", "[mechanism]") {
  Scene scene = sample_scene();
  scene.floor.level = -0.05;
  CHECK(tread_heights(scene).front() == Approx(0.250).margin(1e-14));  // 3000 / 12
  scene.floor.level = 0.0;
  scene.stair.treads->first = 0.2;
  CHECK(tread_heights(scene).front() == 0.2);
  CHECK(tread_heights(scene).back() == Approx(0.2 + 10 * 0.25).margin(1e-14));  // 2750 in 11 rises of 250
  scene.stair.treads->rise = 0.246;
  CHECK(tread_heights(scene).size() == 12);  // 0.2 + 11 * 0.246 = 2.906 is still below the deck
}

TEST_CASE("treads: tops are level in the working pose, at their heights, front edge on the front face", "[mechanism]") {
  const Scene scene = sample_scene();
  const Laid laid(scene);
  const std::vector<double> heights = tread_heights(scene);
  REQUIRE(laid.treads.size() == heights.size());
  for (std::size_t k = 0; k < heights.size(); ++k) {
    const std::vector<Vec2> corners = laid.in_room(laid.treads[k]).core;  // front top, back top, back and front bottom
    CHECK(corners[0].y == Approx(heights[k]).margin(1e-14));
    CHECK(corners[1].y == Approx(heights[k]).margin(1e-14));
    CHECK(corners[0].x - corners[1].x == Approx(0.140).margin(1e-14));
    CHECK(corners[0].y - corners[3].y == Approx(0.038).margin(1e-14));
    CHECK(laid.treads[k].outline.core[0].y == Approx(0.070).margin(1e-14));
    CHECK(laid.treads[k].stations.front().hi == Approx(0.242).margin(1e-15));  // between the side rails
    CHECK(laid.treads[k].stations.front().lo == Approx(-0.242).margin(1e-15));
  }
}

TEST_CASE("treads: each goes with the section that holds its middle", "[mechanism]") {
  const Laid laid(sample_scene());
  CHECK(laid.faults.empty());
  for (const StairPart& tread : laid.treads) {
    const double middle = 0.5 * (tread.outline.core[0].x + tread.outline.core[2].x);
    CHECK(middle >= 0.0);
    CHECK(middle <= laid.linkage.length[static_cast<std::size_t>(tread.section)]);
  }
  CHECK(laid.treads[4].section == 1);
  CHECK(laid.treads[5].section == 0);
}

TEST_CASE("treads: one that lies across a joint is named with its height and its overlap", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.sections = {1.680, 1.550};
  scene.stair.casters.along = 1.610;
  const Laid laid(scene);
  REQUIRE(laid.faults.size() == 1);
  // The sixth tread covers 1.6065 to 1.7088 m along, so the joint at 1.680 m cuts 28.8 mm off it.
  CHECK(laid.faults[0].text ==
        "the tread 1.475 m above the floor lies across the joint at 1.680 m along: it overlaps the joint by 29 mm");
  CHECK(laid.faults[0].parts == std::vector<std::string>{"tread", "hinge"});
  CHECK(laid.treads[5].section == 0);
}

TEST_CASE("treads: those past the side rails' upper end are left out", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.above_pivot = -0.250;
  CHECK(Laid(scene).treads.size() == 10);
}

TEST_CASE("treads: overhang carries the front edge past the front face, square to it", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.treads->overhang = 0.030;
  CHECK(Laid(scene).treads[3].outline.core[0].y == Approx(0.100).margin(1e-14));
}

TEST_CASE("treads: a deck at the floor is refused", "[mechanism]") {
  Scene scene = sample_scene();
  scene.loft.deck = 0.0;
  CHECK(testing::fault_of([&] { tread_heights(scene); }).problem ==
        "there is nothing to climb between the floor and the deck");
}
