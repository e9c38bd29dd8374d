#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>

#include "sim/geometry/distance.h"
#include "sim/mechanism/mass.h"
#include "sim/mechanism/model.h"
#include "sim/mechanism/round_slabs.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;
using stowpath::testing::one_section_scene;
using stowpath::testing::sample_scene;

namespace {

struct Wheel {
  Model model;
  SectionPoses X_W;

  explicit Wheel(const Scene& scene) : model(build_model(scene)) {
    X_W = place_sections(model.linkage, {0.0, model.working_lean, {}});
  }
  std::vector<StairPart> casters() const {
    std::vector<StairPart> out;
    for (const StairPart& part : model.stair)
      if (part.kind == PartKind::caster) out.push_back(part);
    return out;
  }
  Vec2 axle() const { return X_W[static_cast<std::size_t>(model.wheels.section)] * model.wheels.axle; }
  std::vector<Vec2> corners(const StairPart& part) const {
    return placed(part.outline, X_W[static_cast<std::size_t>(part.section)]).core;
  }
  /// How far the parts of the caster stand round a point at that station; not above 0: it lies in one of them.
  double distance(Vec2 p_W, double station) const {
    double least = INFINITY;
    for (const StairPart& part : casters()) {
      if (!contains(part.stations, station)) continue;
      const RoundedPolygon outline = placed(part.outline, X_W[static_cast<std::size_t>(part.section)]);
      least = std::min(least, signed_distance(Outline(make_disc(p_W, 0.0)), Outline(outline)));
    }
    return least;
  }
};

Scene swivelling() {
  Scene scene = sample_scene();
  scene.stair.casters.swivels = true;
  scene.stair.casters.trail = 0.030;
  return scene;
}

void check_corners(std::vector<Vec2> corners, Vec2 middle, double half_width, double half_height) {
  REQUIRE(corners.size() == 4);
  for (const Vec2 corner : corners) {
    CHECK(std::abs(corner.x - middle.x) == Approx(half_width).margin(1e-12));
    CHECK(std::abs(corner.y - middle.y) == Approx(half_height).margin(1e-12));
  }
}

}  // namespace

TEST_CASE("caster: a rigid wheel is seen on edge, upright in the working pose, with its lowest line on the floor",
          "[mechanism]") {
  for (const Scene& scene : {sample_scene(), one_section_scene()}) {
    const Wheel wheel(scene);
    CHECK(wheel.axle().y == Approx(scene.floor.level + 0.0375).margin(1e-12));
    const std::vector<StairPart> slabs = wheel.casters();
    REQUIRE(slabs.size() == 8);
    double lowest = INFINITY;
    for (const StairPart& slab : slabs) {
      check_corners(
          wheel.corners(slab), wheel.axle(), 0.016,
          bounding_disc(slab.outline).radius > 0.0 ? std::abs(wheel.corners(slab)[0].y - wheel.axle().y) : 0.0);
      for (const Vec2 corner : wheel.corners(slab)) lowest = std::min(lowest, corner.y);
    }
    CHECK(lowest == Approx(scene.floor.level).margin(1e-12));
    check_corners(wheel.corners(slabs[0]), wheel.axle(), 0.016, 0.0375);
  }
}

TEST_CASE("caster: a rigid wheel's slabs hold the whole wheel, and stand out of it by no more than they say",
          "[mechanism]") {
  const Wheel wheel(sample_scene());
  std::mt19937 random(31);
  std::uniform_real_distribution<double> offset(-0.045, 0.045);
  double excess = 0.0;
  for (const StairPart& slab : wheel.casters()) excess = std::max(excess, slab.excess);
  int held = 0;
  for (int n = 0; n < 20'000; ++n) {
    const double along = offset(random), up = offset(random);
    const bool in = wheel.distance(wheel.axle() + Vec2{0.0, up}, 0.310 + along) <= 1e-12;
    if (std::hypot(along, up) <= 0.0375) CHECK(in);
    if (in) CHECK(std::hypot(along, up) <= 0.0375 + excess);
    held += in ? 1 : 0;
  }
  CHECK(held > 10'000);  // both answers are drawn: the wheel fills 55 % of the square
  CHECK(held < 15'000);
  CHECK(excess < 0.004);
}

TEST_CASE("caster: a swivel takes all that its wheel can sweep", "[mechanism]") {
  const Wheel wheel(swivelling());
  const double sweep = std::hypot(0.030 + 0.0375, 0.016);
  REQUIRE(wheel.casters().size() == 1);
  const StairPart caster = wheel.casters()[0];
  check_corners(wheel.corners(caster), wheel.axle(), sweep, 0.0375);
  REQUIRE(caster.stations.size() == 2);
  CHECK(caster.stations[1].lo == Approx(0.310 - sweep).margin(1e-12));
  CHECK(caster.stations[1].hi == Approx(0.310 + sweep).margin(1e-12));
  for (int turn = 0; turn < 360; ++turn) {  // the far edge of the tread, both corners
    const double a = turn * 0.017453292519943295;
    for (const double side : {-0.016, 0.016}) {
      const double out = 0.0675 * std::cos(a) - side * std::sin(a), along = 0.0675 * std::sin(a) + side * std::cos(a);
      CHECK(wheel.distance(wheel.axle() + Vec2{out, 0.0}, 0.310 + along) <= 1e-12);
    }
  }
}

TEST_CASE("caster: its kind changes no mass and not where the stair stands", "[mechanism]") {
  const Wheel rigid(sample_scene()), swivel(swivelling());
  CHECK(rigid.model.working_lean == swivel.model.working_lean);
  for (std::size_t j = 0; j < rigid.model.masses.size(); ++j) {
    CHECK(rigid.model.masses[j].mass == swivel.model.masses[j].mass);
    CHECK(rigid.model.masses[j].centre == swivel.model.masses[j].centre);
    CHECK(rigid.model.masses[j].inertia == swivel.model.masses[j].inertia);
  }
  const std::vector<MassItem> items = mass_items(sample_scene(), rigid.model.stair);
  CHECK(std::count_if(items.begin(), items.end(), [](const MassItem& i) { return i.kind == PartKind::caster; }) == 1);
  CHECK(std::none_of(items.begin(), items.end(),
                     [](const MassItem& i) { return i.kind == PartKind::hinge || i.kind == PartKind::lock_pin; }));
}

TEST_CASE("caster: as the section turns, a corner dips under the lowest line by the diagonal's excess at most",
          "[mechanism]") {
  const Wheel wheel(sample_scene());
  const double dip = std::hypot(0.0375, 0.016) - 0.0375;
  CHECK(corner_dip(wheel.model.wheels) == Approx(dip).margin(1e-15));
  double lowest = 0.0;
  for (int step = -900; step <= 900; ++step) {
    const Pose2 X_W = make_pose(wheel.axle(), 0.1 * step * 0.017453292519943295);
    for (const Vec2 corner : {Vec2{-0.016, -0.0375}, Vec2{0.016, -0.0375}, Vec2{0.016, 0.0375}, Vec2{-0.016, 0.0375}})
      lowest = std::min(lowest, (X_W * corner).y);
  }
  CHECK(-lowest <= dip + 1e-12);
  CHECK(-lowest >= dip - 1e-6);  // the corner comes straight below at atan(16 / 37.5), to a twentieth of a degree
}
