#include "render/studio/grip.h"

#include <catch2/catch.hpp>
#include <numbers>

#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

constexpr double kReach = 0.02;

struct Table {
  Scene scene = sample_scene();
  Model model = build_model(scene);
  Configuration pose{model.span.middle(), 0.9, {1.0, 0.0}};

  Vec2 on(int section, double along) const {
    return place_sections(model.linkage, pose)[static_cast<std::size_t>(section)] * Vec2{along, 0.0};
  }
};

}  // namespace

TEST_CASE("grip: the upper section gives the lean, the lower one the fold, the air nothing", "[studio]") {
  const Table t;
  const auto upper = grip_at(t.model, t.pose, t.on(0, 0.8), kReach), lower = grip_at(t.model, t.pose, t.on(1, 0.8), kReach);
  REQUIRE(upper);
  CHECK(upper->kind == GripKind::lean);
  REQUIRE(lower);
  CHECK(lower->kind == GripKind::fold);
  CHECK(lower->hinge == 0);
  CHECK_FALSE(grip_at(t.model, t.pose, {-1.0, 1.0}, kReach));
}

TEST_CASE("grip: what is pulled follows the pointer about its joint", "[studio]") {
  const Table t;
  const Vec2 pivot = t.model.linkage.pivot;
  const auto about = [](Vec2 centre, Vec2 p, double turn) {
    const Vec2 v = p - centre;
    const double c = std::cos(turn), s = std::sin(turn);
    return centre + Vec2{c * v.x - s * v.y, s * v.x + c * v.y};
  };
  const Vec2 from = t.on(0, 1.0);
  const Configuration leant = pulled(t.scene, t.model, t.pose, {GripKind::lean, 0}, from, about(pivot, from, 0.2));
  CHECK(leant.lean == Approx(t.pose.lean + 0.2));
  CHECK(leant.folds == t.pose.folds);

  // Folding brings the held point to the pointer.
  const Vec2 hinge = place_sections(t.model.linkage, t.pose)[0] * t.model.linkage.distal(0), low = t.on(1, 1.0);
  const Vec2 to = about(hinge, low, -0.3);
  const Configuration folded = pulled(t.scene, t.model, t.pose, {GripKind::fold, 0}, low, to);
  const Vec2 reached = place_sections(t.model.linkage, folded)[1] * Vec2{1.0, 0.0};
  CHECK(norm(reached - to) < 1e-9);
  CHECK(folded.lean == t.pose.lean);
}

TEST_CASE("grip: nothing is pulled past its limits", "[studio]") {
  const Table t;
  Configuration folded = t.pose;
  for (int k = 0; k < 40; ++k) {
    const Vec2 hinge = place_sections(t.model.linkage, folded)[0] * t.model.linkage.distal(0);
    const Vec2 at = place_sections(t.model.linkage, folded)[1] * Vec2{1.0, 0.0};
    folded = pulled(t.scene, t.model, folded, {GripKind::fold, 0}, at, at + 0.2 * Vec2{-(hinge - at).y, (hinge - at).x});
  }
  const double limit = t.scene.stair.hinges[0].limit;
  CHECK((folded.folds[0] == 0.0 || folded.folds[0] == limit));
  CHECK(rolled(t.model, t.pose, 100.0).station == t.model.span.hi);
  CHECK(rolled(t.model, t.pose, -100.0).station == t.model.span.lo);
}

TEST_CASE("grip: turned by key, each joint goes to its limits and no further, and none that is not there", "[studio]") {
  const Table t;
  const double farthest = 120.0 * std::numbers::pi / 180.0, limit = t.scene.stair.hinges[0].limit;
  const auto often = [&](const Grip& grip, double by) {
    Configuration pose = t.pose;
    for (int k = 0; k < 2000; ++k) pose = turned_by(t.scene, pose, grip, by);
    return pose;
  };
  CHECK(turned_by(t.scene, t.pose, {GripKind::lean, 0}, 0.01).lean == Approx(t.pose.lean + 0.01));
  CHECK(often({GripKind::lean, 0}, 0.01).lean == Approx(farthest));
  CHECK(often({GripKind::lean, 0}, -0.01).lean == Approx(-farthest));
  CHECK(often({GripKind::fold, 0}, 0.01).folds[0] == limit);
  CHECK(often({GripKind::fold, 0}, -0.01).folds[0] == 0.0);
  REQUIRE(t.scene.stair.hinges.size() == 1);
  CHECK(often({GripKind::fold, 1}, 0.01).folds == t.pose.folds);
  const Scene three = parse_scene(gallery_text("three-section"), "three-section");
  CHECK(turned_by(three, t.pose, {GripKind::fold, 1}, 0.01).folds[1] == Approx(t.pose.folds[1] + 0.01));
}

TEST_CASE("grip: parts are named, the stair before the room", "[studio]") {
  const Table t;
  CHECK(part_at(t.model, t.pose, t.on(1, 0.8), 0.0).find("section 2") != std::string::npos);
  CHECK(part_at(t.model, t.pose, {-5.0, 50.0}, 0.0).empty());
}
