#include "sim/mechanism/bracket_parts.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <numbers>
#include <random>
#include <string>

#include "tests/support/random_outlines.h"
#include "tests/support/sample_scene.h"
#include "tests/support/true_band.h"

using namespace stowpath;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kTolerance = 5e-5;  // [m]

// The pipe's centre at the origin, its radius 16.7 mm: outlines then read as they are measured.
Scene at_the_pipe(const Brackets& brackets) {
  Scene scene = testing::sample_scene();
  scene.rail.at = {};
  scene.rail.brackets = brackets;
  return scene;
}

std::vector<RoomPart> parts_of(const Brackets& brackets) { return bracket_parts(at_the_pipe(brackets), kTolerance); }

std::vector<RoomPart> named(const std::vector<RoomPart>& parts, const std::string& name) {
  std::vector<RoomPart> out;
  std::copy_if(parts.begin(), parts.end(), std::back_inserter(out), [&](const RoomPart& p) { return p.name == name; });
  return out;
}

double off_parts(const std::vector<RoomPart>& parts, Vec2 p) {
  double least = 1.0;
  for (const RoomPart& part : parts) least = std::min(least, testing::off_outline(part.outline, p));
  return least;
}

void check_box(const RoomPart& part, Vec2 least, Vec2 greatest) {
  const RoundedPolygon box = make_box(least, greatest);
  REQUIRE(part.outline.core.size() == 4);
  for (std::size_t i = 0; i < 4; ++i) CHECK(norm(part.outline.core[i] - box.core[i]) < 1e-15);
}

Brackets wall_saddle() { return testing::sample_scene().rail.brackets; }

Brackets strap(TabWay way, double arc_degrees) {
  Brackets b;
  b.stations = {1.0, 2.0};
  b.shape = BracketShape::strap;
  b.strap_width = 0.025;
  b.strap_thickness = 0.003;
  b.strap_arc = arc_degrees * kDegree;
  b.tab = way;
  b.projection = 0.100;
  return b;
}

}  // namespace

TEST_CASE("brackets: an arm bent at its elbow runs as its rod does, within the tolerance", "[mechanism]") {
  Brackets bent = wall_saddle();  // projection 75, drop 55, arm 12, saddle 5, plate 6
  bent.bend = 0.015;
  const ArcBand elbow{{-0.021, -0.034}, 0.015, 0.027, -90 * kDegree, 90 * kDegree};
  const RoundedPolygon down = make_box({-0.006, -0.034}, {0.006, -0.0217}),
                       back = make_box({-0.069, -0.061}, {-0.021, -0.049});
  const std::vector<RoomPart> arm = named(parts_of(bent), "bracket arm");
  std::mt19937 random(5);
  int within = 0;
  for (int n = 0; n < 20'000; ++n) {
    const Vec2 p{testing::uniform(random, -0.08, 0.01), testing::uniform(random, -0.07, -0.02)};
    const bool rod = testing::off_band(elbow, p) == 0.0 || testing::off_outline(down, p) == 0.0 ||
                     testing::off_outline(back, p) == 0.0;
    if (!rod) continue;
    ++within;
    CHECK(off_parts(arm, p) < 1e-15);
  }
  CHECK(within > 2'000);
  double worst = 0.0;
  for (const RoomPart& part : arm) {
    for (const Vec2 p : testing::rim_points(part.outline)) {
      if (p.x < -0.069) continue;  // the rounded end within the plate
      worst = std::max(
          worst, std::min({testing::off_band(elbow, p), testing::off_outline(down, p), testing::off_outline(back, p)}));
    }
  }
  CHECK(worst <= kTolerance);
  CHECK(worst > 0.5 * kTolerance);
}

TEST_CASE("brackets: what is bent owns up to the tolerance, and what is straight has no excess", "[mechanism]") {
  Brackets bent = wall_saddle();
  bent.bend = 0.015;
  const std::vector<RoomPart> arm = named(parts_of(bent), "bracket arm");  // upright, elbow's pieces, level
  for (std::size_t i = 0; i < arm.size(); ++i)
    CHECK(arm[i].excess == (i == 0 || i + 1 == arm.size() ? 0.0 : kTolerance));
  for (const RoomPart& part : parts_of(wall_saddle())) CHECK(part.excess == 0.0);
}

TEST_CASE("brackets: a flat on the pipe lets the saddle and the arm's top come that much higher", "[mechanism]") {
  Brackets flat = wall_saddle();
  flat.flat = 0.002;
  const std::vector<RoomPart> plain = parts_of(wall_saddle()), filed = parts_of(flat);
  check_box(named(filed, "bracket saddle")[0], {-0.7 * 0.0167, -0.0167 - 0.003}, {0.7 * 0.0167, -0.0167 + 0.002});
  CHECK(named(filed, "bracket arm")[0].outline.core[2].y - named(plain, "bracket arm")[0].outline.core[2].y ==
        Approx(0.002));
  CHECK(named(filed, "bracket arm")[0].outline.core[0].y == named(plain, "bracket arm")[0].outline.core[0].y);
  CHECK(named(filed, "bracket arm")[1].outline.core[0].y == named(plain, "bracket arm")[1].outline.core[0].y);
}

TEST_CASE("brackets: screw heads stand on the plate's face and under the saddle, side by side along the rail",
          "[mechanism]") {
  Brackets b = wall_saddle();
  b.plate_heads = ScrewHeads{0.014, 0.005, 0.030, {-0.032, 0.032}};
  b.saddle_heads = ScrewHeads{0.008, 0.002, 0.0, {}};
  const std::vector<RoomPart> heads = named(parts_of(b), "bracket screw head");
  REQUIRE(heads.size() == 5);
  check_box(heads[0], {-0.004, -0.0167 - 0.005 - 0.002}, {0.004, -0.0167 - 0.005});
  CHECK(heads[0].stations[0].length() == Approx(0.008));
  check_box(heads[1], {-0.069, -0.055 - 0.032 - 0.007}, {-0.064, -0.055 - 0.032 + 0.007});
  const double station = b.stations[0];
  CHECK(heads[1].stations[0].middle() == Approx(station - 0.015));
  CHECK(heads[2].stations[0].middle() == Approx(station + 0.015));
  CHECK(heads[3].outline.core[0].y == Approx(-0.055 + 0.032 - 0.007));
}

TEST_CASE("brackets: a band covers its arc of the pipe from the tab over the wall side, within the tolerance",
          "[mechanism]") {
  for (const auto& [way, arc, from] :
       {std::tuple{TabWay::up, 360.0, 90.0}, {TabWay::up, 200.0, 90.0}, {TabWay::wall, 180.0, 180.0}}) {
    const std::vector<RoomPart> band = named(parts_of(strap(way, arc)), "bracket band");
    const ArcBand truth{{}, 0.0167, 0.0197, from * kDegree, arc * kDegree};
    std::mt19937 random(6);
    for (int n = 0; n < 3'000; ++n) {
      const double angle = truth.from + truth.sweep * testing::uniform(random, 0, 1);
      const double r = testing::uniform(random, truth.inner, truth.outer);
      CHECK(off_parts(band, r * Vec2{std::cos(angle), std::sin(angle)}) < 1e-15);
    }
    double worst = 0.0;
    for (const RoomPart& part : band) {
      CHECK(part.excess == kTolerance);
      for (const Vec2 p : testing::rim_points(part.outline)) worst = std::max(worst, testing::off_band(truth, p));
    }
    CHECK(worst <= kTolerance);
  }
}

TEST_CASE("brackets: a strap's tab goes to the mounting face, twice as thick where both legs meet", "[mechanism]") {
  check_box(named(parts_of(strap(TabWay::up, 360)), "bracket tab")[0], {-0.003, 0.0167}, {0.003, 0.100});
  check_box(named(parts_of(strap(TabWay::wall, 180)), "bracket tab")[0], {-0.100, -0.0015}, {-0.0167, 0.0015});
  Brackets plated = strap(TabWay::wall, 180);
  plated.plate_width = 0.060;
  plated.plate_height = 0.040;
  plated.plate_thickness = 0.004;
  const std::vector<RoomPart> parts = parts_of(plated);
  check_box(named(parts, "bracket tab")[0], {-0.096, -0.0015}, {-0.0167, 0.0015});
  check_box(named(parts, "bracket plate")[0], {-0.100, -0.020}, {-0.096, 0.020});
  CHECK(named(parts, "bracket plate")[0].stations[0] == Interval{0.970, 1.030});
}

TEST_CASE("brackets: a post stands under its saddle, or beside the pipe with an arm to it", "[mechanism]") {
  Brackets b = wall_saddle();
  b.shape = BracketShape::post_mounted;
  b.plate_thickness = b.plate_width = b.plate_height = 0.0;
  b.post = BracketPost{0.045, 0.070, true, 0.040, -2.0};
  const std::vector<RoomPart> beside = parts_of(b);
  check_box(named(beside, "bracket post")[0], {-0.120, -2.0}, {-0.075, -0.015});
  CHECK(named(beside, "bracket arm")[1].outline.core[1].x == Approx(-0.075));
  b.post->beside = false;
  const std::vector<RoomPart> under = parts_of(b);
  check_box(named(under, "bracket post")[0], {-0.0225, -2.0}, {0.0225, -0.0167 - 0.005});
  CHECK(named(under, "bracket arm").empty());
  CHECK(named(under, "bracket post")[0].stations[0].length() == Approx(0.070));
}
