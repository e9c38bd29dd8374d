// Nothing passes through anything: parts thinner than the way they go in a step.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include <catch2/catch.hpp>

#include "tests/support/gallery.h"
#include "tests/support/hinged_rods.h"
#include "tests/support/random_outlines.h"

namespace stowpath {
namespace {

using testing::uniform;

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kLong = 2.4384;  // [m]

void add_part(Model& model, int section, const RoundedPolygon& outline) {
  model.stair.push_back(
      {PartKind::extra, "part " + std::to_string(model.stair.size()), section, outline, {{-0.3, 0.3}}, false, -1});
}

void add_post(Model& model, const RoundedPolygon& outline) {
  const int number = static_cast<int>(model.room.size());
  model.room.push_back({PartKind::obstacle, "post " + std::to_string(number), outline, {{-0.1, 0.1}}, 0.0, number});
}

// A rod with a wire across its foot, let go 10 degrees off upright; a post stands in the wire's circle.
struct WireFall {
  bool touched = false;
  double lean = 0.0, speed = 0.0;  // at the first touch [rad, m/s]
  double past = 0.0;               // farthest beyond the post [m]
};
WireFall fall_on_post(double at_lean, double wire, double post) {
  Model rod = testing::hinged_rods(1, kLong, 20.0);
  const Vec2 foot{kLong, 0.0};
  add_part(rod, 0, make_disc(foot, 0.5 * wire));
  add_post(rod, make_disc({kLong * std::sin(at_lean), -kLong * std::cos(at_lean)}, 0.5 * post));
  SideWorld world(rod, testing::bare_setup(rod, 1.0 / 960.0), {0.0, 170.0 * kDegree, {}});
  world.start_from_rest();
  WireFall fall;
  double least = 170.0 * kDegree;
  while (world.time() < 2.5) {
    world.step();
    least = std::min(least, testing::lean_in(world, 0));
    if (world.new_touches().empty() || fall.touched) continue;
    fall = {true, testing::lean_in(world, 0), world.new_touches().front().speed, 0.0};
  }
  fall.past = kLong * (at_lean - least);
  return fall;
}

// From level on the foot goes faster than 8 m/s: eight times the post's thickness in a step.
TEST_CASE("thin parts: a falling wire of a millimetre stops at a post of a millimetre, wherever that stands",
          "[rehearsal]") {
  for (int i = 0; i <= 60; ++i) {
    const double at_lean = (90.0 - 2.013 * i) * kDegree;
    const WireFall fall = fall_on_post(at_lean, 1e-3, 1e-3);
    CAPTURE(at_lean / kDegree);
    REQUIRE(fall.touched);
    const double speed = std::sqrt(3.0 * kGravity * kLong * (std::cos(at_lean) - std::cos(170.0 * kDegree)));
    CHECK(fall.speed == Approx(speed).epsilon(2e-3));
    CHECK(kLong * (fall.lean - at_lean) == Approx(0.0).margin(2e-3));
    CHECK(fall.past < 1e-3);
  }
}

// A step of the world, and where things are on the way.
struct StepWay {
  SectionPoses from{};
  std::vector<double> turned_from;
  std::vector<std::pair<int, int>> touching_from;
  SectionPoses to{};
  std::vector<double> turned_to;

  SectionPoses at(double u) const {
    SectionPoses X_W{};
    for (std::size_t j = 0; j < turned_to.size(); ++j)
      X_W[j] = make_pose(from[j].p + u * (to[j].p - from[j].p), turned_from[j] + u * (turned_to[j] - turned_from[j]));
    return X_W;
  }

  double least(const WorldPart& a, const WorldPart& b) const {
    constexpr int kLooks = 200;
    double least = INFINITY;
    for (int k = 0; k <= kLooks; ++k) least = std::min(least, part_distance(a, b, at(static_cast<double>(k) / kLooks)));
    return least;
  }
};

// Two rods with wires and slats on them, a hundredth to ten millimetres thick, among others of the kind.
Model thin_things(std::mt19937& random) {
  Model model = testing::hinged_rods(2, 1.5, 15.0);
  const auto thin = [&](Vec2 at) {
    const double turn = uniform(random, 0.0, std::numbers::pi), half = uniform(random, 0.0, 0.1);
    const Vec2 along{half * std::cos(turn), half * std::sin(turn)};
    const double radius = 0.5 * std::pow(10.0, uniform(random, -5.0, -2.0));
    return half < 0.03 ? make_disc(at, radius) : make_capsule(at - along, at + along, radius);
  };
  for (int i = 0; i < 6; ++i) add_part(model, i % 2, thin({uniform(random, 0.4, 1.5), uniform(random, -0.1, 0.1)}));
  for (int i = 0; i < 12; ++i) {
    const double angle = uniform(random, -1.3, 1.5), far = uniform(random, 0.8, 3.0);
    add_post(model, thin({far * std::sin(angle), -far * std::cos(angle)}));
  }
  return model;
}

struct Passes {
  int unseen = 0, touches = 0, crossings = 0;
};

bool seen(const SideWorld& world, const StepWay& way, std::pair<int, int> pair) {
  const auto holds = [&](const auto& pairs) { return std::find(pairs.begin(), pairs.end(), pair) != pairs.end(); };
  const auto& begun = world.new_touches();
  return holds(way.touching_from) || holds(world.touching()) || holds(world.met_from_start()) ||
         std::any_of(begun.begin(), begun.end(), [&](const WorldTouch& touch) {
           return std::pair{touch.a, touch.b} == pair;
         });
}

// Two looks a quarter of both thicknesses apart leave no more than an eighth of them unseen, and never more than the
// skin.
double may_be_unseen(const WorldPart& a, const WorldPart& b) {
  return std::min(kWorldSkin, 0.25 * (a.shape.radius + b.shape.radius));
}

void look(const SideWorld& world, const StepWay& way, Passes& passes) {
  const auto& parts = world.parts();
  for (int a = 0; a < static_cast<int>(parts.size()); ++a)
    for (int b = a + 1; b < static_cast<int>(parts.size()); ++b) {
      const WorldPart &first = parts[static_cast<std::size_t>(a)], &second = parts[static_cast<std::size_t>(b)];
      if (!can_touch(first, second, true, true) || part_distance(first, second, way.from) > 0.04) continue;
      const double least = way.least(first, second), allowed = may_be_unseen(first, second);
      if (least > -allowed - 2e-5) continue;
      ++passes.crossings;
      passes.unseen += !seen(world, way, {a, b});
    }
}

Passes passes_in(std::mt19937& random) {
  const Model model = thin_things(random);
  SideWorld world(model, testing::bare_setup(model, 1.0 / 960.0), {0.0, uniform(random, 1.5, 3.0), {}});
  Passes passes;
  while (world.time() < 1.2) {
    StepWay way{world.poses(), world.turns(), world.touching(), {}, {}};
    world.step();
    way.to = world.poses();
    way.turned_to = world.turns();
    passes.touches += static_cast<int>(world.new_touches().size());
    look(world, way, passes);
  }
  return passes;
}

TEST_CASE("thin parts: of wires and slats that fall among others none passes another unseen", "[rehearsal][random]") {
  std::mt19937 random(17);
  Passes all;
  for (int i = 0; i < 40; ++i) {
    const Passes passes = passes_in(random);
    all.unseen += passes.unseen;
    all.touches += passes.touches;
    all.crossings += passes.crossings;
  }
  CAPTURE(all.touches, all.crossings);
  CHECK(all.unseen == 0);
  CHECK(all.touches > 40);
}

// A wire across the way of the parked stair, which comes down with its line gone.
TEST_CASE("thin parts: a stair let go does not pass a wire of a millimetre", "[rehearsal]") {
  Model model = testing::model_of(testing::rig_text("demo-cured"));
  const Configuration parked = at(model.linkage, model.moves.back().segments.back(), 1.0);
  const Vec2 half_way{std::sin(45.0 * kDegree), -std::cos(45.0 * kDegree)};
  for (const double far : {0.6, 1.1, 1.6}) {
    Model wired = model;
    const Vec2 middle = model.linkage.pivot + far * half_way;
    wired.room.push_back({PartKind::obstacle,
                          "wire",
                          make_disc(middle, 5e-4),
                          {{parked.station - 1.0, parked.station + 1.0}},
                          0.0,
                          100});
    SideSetup setup = testing::bare_setup(wired, 1.0 / 960.0);
    setup.station = parked.station;
    SideWorld world(wired, setup, parked);
    double speed = 0.0, gap = 1.0, least = parked.lean;
    while (world.time() < 2.0) {
      world.step();
      least = std::min(least, testing::lean_in(world, 0));
      for (const WorldTouch& touch : world.new_touches()) {
        if (world.parts()[static_cast<std::size_t>(touch.b)].name != "wire" || speed > 0.0) continue;
        speed = touch.speed;
        gap = touch.gap;
      }
    }
    CAPTURE(far);
    CHECK(speed > 1.0);
    CHECK(gap < kWorldSkin);
    CHECK(least > 40.0 * kDegree);
  }
}

}  // namespace
}  // namespace stowpath
