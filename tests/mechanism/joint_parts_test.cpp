#include <catch2/catch.hpp>

#include "sim/mechanism/model.h"
#include "sim/mechanism/stair_parts.h"
#include "sim/mechanism/standing.h"
#include "sim/scene/reader.h"
#include "tests/support/full_scene.h"
#include "tests/support/gallery.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;
using stowpath::testing::sample_scene;

namespace {

std::vector<StairPart> joints_of(const Scene& scene) {
  std::vector<StairPart> parts;
  add_joints(scene, make_linkage(scene), parts);
  return parts;
}

std::vector<StairPart> named(const std::vector<StairPart>& parts, const std::string& name) {
  std::vector<StairPart> out;
  for (const StairPart& part : parts)
    if (part.name == name) out.push_back(part);
  return out;
}

void check_box(const RoundedPolygon& outline, Vec2 least, Vec2 greatest) {
  CHECK(norm(outline.core[0] - least) < 1e-12);
  CHECK(norm(outline.core[2] - greatest) < 1e-12);
  CHECK(outline.radius == 0.0);
}

void check_stretches(const std::vector<Interval>& stations, const std::vector<Interval>& wanted) {
  REQUIRE(stations.size() == wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    CHECK(stations[i].lo == Approx(wanted[i].lo).margin(1e-12));
    CHECK(stations[i].hi == Approx(wanted[i].hi).margin(1e-12));
  }
}

Scene three_sections() {
  Scene scene = sample_scene();
  scene.stair.sections = {1.000, 1.100, 1.130};
  scene.stair.hinges.push_back({HingeFace::front, 0.040, 3.0, {}, 0.060, 0.005});
  scene.stair.locks.clear();
  return scene;
}

}  // namespace

TEST_CASE("joint: leaves lie on the back face of both sections, from the joint, as wide as the side rails",
          "[mechanism]") {
  const std::vector<StairPart> leaves = named(joints_of(sample_scene()), "hinge leaf");
  REQUIRE(leaves.size() == 2);
  check_box(leaves[0].outline, {1.790 - 0.075, -0.073}, {1.790, -0.070});
  check_box(leaves[1].outline, {0.0, -0.073}, {0.075, -0.070});
  for (int k : {0, 1}) {
    const StairPart& leaf = leaves[static_cast<std::size_t>(k)];
    CHECK(leaf.kind == PartKind::hinge);
    CHECK(leaf.section == k);
    CHECK(leaf.hinge == 0);
    CHECK_FALSE(leaf.only_pinned);
    check_stretches(leaf.stations, {{-0.280, -0.242}, {0.242, 0.280}});
  }
}

TEST_CASE("joint: a front hinge's leaves are the mirror image of a back one's", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.hinges[0].face = HingeFace::front;
  const std::vector<StairPart> leaves = named(joints_of(scene), "hinge leaf");
  REQUIRE(leaves.size() == 2);
  check_box(leaves[0].outline, {1.790 - 0.075, 0.070}, {1.790, 0.073});
  check_box(leaves[1].outline, {0.0, 0.070}, {0.075, 0.073});
}

TEST_CASE("joint: of three sections the middle one carries a leaf of each hinge, on its own face", "[mechanism]") {
  const std::vector<StairPart> leaves = named(joints_of(three_sections()), "hinge leaf");
  REQUIRE(leaves.size() == 4);
  check_box(leaves[1].outline, {0.0, -0.073}, {0.075, -0.070});
  check_box(leaves[2].outline, {1.100 - 0.060, 0.070}, {1.100, 0.075});
  CHECK((leaves[1].section == 1 && leaves[1].hinge == 0));
  CHECK((leaves[2].section == 1 && leaves[2].hinge == 1));
  CHECK((leaves[3].section == 2 && leaves[3].hinge == 1));
}

TEST_CASE("joint: a leaf as thick as the offset lies on the face, a thicker one is let in", "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.hinges[0].offset = 0.003;
  CHECK(named(joints_of(scene), "hinge leaf").size() == 2);
  scene.stair.hinges[0].offset = 0.0029;
  CHECK(named(joints_of(scene), "hinge leaf").empty());
  CHECK(named(joints_of(scene), "hinge").size() == 1);
}

TEST_CASE("joint: a lock pin's heads lie outside the scab and inside the side rail, and go with the pin",
          "[mechanism]") {
  Scene scene = sample_scene();
  scene.stair.locks[0].head = 0.018;
  scene.stair.locks[0].head_height = 0.006;
  const std::vector<StairPart> parts = joints_of(scene);
  const std::vector<StairPart> pins = named(parts, "lock pin"), heads = named(parts, "lock pin head");
  REQUIRE(pins.size() == 1);
  REQUIRE(heads.size() == 1);
  CHECK(heads[0].outline.core == pins[0].outline.core);
  CHECK(heads[0].outline.radius == 0.009);
  CHECK(heads[0].kind == PartKind::lock_pin);
  CHECK(heads[0].only_pinned);
  CHECK((heads[0].section == 0 && heads[0].hinge == 0));
  check_stretches(heads[0].stations, {{-0.362, -0.356}, {-0.242, -0.236}, {0.236, 0.242}, {0.356, 0.362}});
}

TEST_CASE("joint: leaves and heads are as said, or usual ones, in either unit", "[mechanism][scene]") {
  const auto joint = [](const std::string& text) { return parse_scene(text, "scene.yaml").stair; };
  const std::string millimetres = testing::gallery_text("demo");
  CHECK(joint(millimetres).hinges[0].leaf == Approx(0.075));
  CHECK(joint(millimetres).hinges[0].leaf_thickness == Approx(0.003));
  const double pin = joint(millimetres).locks[0].pin;
  CHECK(joint(millimetres).locks[0].head == Approx(1.8 * pin));
  CHECK(joint(millimetres).locks[0].head_height == Approx(0.6 * pin));
  const std::string told = testing::changed(millimetres, "offset: 12", "offset: 12, leaf: [3 in, 1/8 in]");
  CHECK(joint(told).hinges[0].leaf == Approx(0.0762));
  CHECK(joint(told).hinges[0].leaf_thickness == Approx(0.003175));
}
