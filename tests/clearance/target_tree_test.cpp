#include "sim/clearance/target_tree.h"

#include <catch2/catch.hpp>

#include <random>

using namespace stowpath;

namespace {

Box3 random_box(std::mt19937& random, double size) {
  std::uniform_real_distribution<double> place(-5.0, 5.0), length(0.0, size);
  Box3 box;
  for (Interval& side : box.side) {
    side.lo = place(random);
    side.hi = side.lo + length(random);
  }
  return box;
}

}  // namespace

TEST_CASE("target tree: finds exactly the boxes that meet, in order", "[clearance]") {
  std::mt19937 random(3);
  for (const int count : {0, 1, 4, 5, 9, 64, 500}) {
    std::vector<Box3> boxes;
    for (int k = 0; k < count; ++k) boxes.push_back(random_box(random, 2.0));
    const TargetTree tree(boxes);
    for (int n = 0; n < 200; ++n) {
      const Box3 asked = random_box(random, 4.0);
      std::vector<int> met, found;
      for (int k = 0; k < count; ++k) {
        if (boxes[static_cast<std::size_t>(k)].meets(asked)) met.push_back(k);
      }
      tree.find(asked, found);
      REQUIRE(found == met);
    }
  }
}

TEST_CASE("target tree: many boxes in one place are all found", "[clearance]") {
  const std::vector<Box3> boxes(100, Box3{{Interval{0.0, 1.0}, Interval{0.0, 1.0}, Interval{0.0, 1.0}}});
  std::vector<int> found;
  TargetTree(boxes).find(boxes.front(), found);
  CHECK(found.size() == 100);
}

TEST_CASE("target tree: boxes that only touch do meet, and appended numbers leave earlier ones alone", "[clearance]") {
  const Box3 unit{{Interval{0.0, 1.0}, Interval{0.0, 1.0}, Interval{0.0, 1.0}}};
  const Box3 beside{{Interval{1.0, 2.0}, Interval{0.0, 1.0}, Interval{0.0, 1.0}}};
  const Box3 apart{{Interval{1.5, 2.0}, Interval{0.0, 1.0}, Interval{0.0, 1.0}}};
  std::vector<int> found{7};
  TargetTree({beside, apart}).find(unit, found);
  CHECK(found == std::vector<int>{7, 0});
  CHECK(apart.grown(0.5).meets(unit));
  CHECK_FALSE(apart.grown(0.49).meets(unit));
}
