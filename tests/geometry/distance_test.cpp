#include "sim/geometry/distance.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <numbers>

#include "tests/support/random_outlines.h"
#include "tests/support/slow_distance.h"

namespace stowpath {
namespace {

using testing::Pair;
using testing::random_outline;
using testing::random_pair;
using testing::slow_distance;
using testing::uniform;

/// Coordinates to 10 m carry 1e-15 m of rounding each; the kernel adds a few of those (promised: 1e-12 m).
constexpr double kRounding = 1e-12;
constexpr Pose2 kHere;

double here(const RoundedPolygon& a, const RoundedPolygon& b) { return distance(a, kHere, b, kHere); }

Outline outline(const RoundedPolygon& shape, const Pose2& X_WB) {
  Outline out;
  out.place(Outline(shape), X_WB);
  return out;
}

Pose2 moved(const Pose2& X_WB, Vec2 by) { return {X_WB.p + by, X_WB.c, X_WB.s}; }

using Distance = std::function<double(const Pair&)>;

double kernel(const Pair& pair) { return distance(pair.a, pair.X_WA, pair.b, pair.X_WB); }

/// What the kernel would be with one edge of A cut off (where it has three or more).
double kernel_missing_an_edge(Pair pair) {
  if (pair.a.core.size() > 3) pair.a.core.pop_back();
  return kernel(pair);
}

double kernel_blind_to_depth(const Pair& pair) {
  const double radii = pair.a.radius + pair.b.radius;
  return std::max(0.0, kernel(pair) + radii) - radii;
}

/// What the kernel would be if cores that meet edge to edge counted as apart, as an earlier one did.
double kernel_blind_to_equals(const Pair& pair) {
  const bool equal = pair.a.core == pair.b.core && pair.X_WA.p == pair.X_WB.p && pair.X_WA.c == pair.X_WB.c;
  return equal ? std::abs(kernel(pair)) : kernel(pair);
}

struct Comparison {
  double worst = 0.0;
  double overlapping = 0.0;  // share of the pairs
};

Comparison compare_with_slow(const Distance& tested, int pairs, unsigned seed) {
  std::mt19937 random(seed);
  Comparison out;
  for (int i = 0; i < pairs; ++i) {
    const Pair pair = random_pair(random);
    const long double truth = slow_distance(pair.a, pair.X_WA, pair.b, pair.X_WB);
    const double error = static_cast<double>(std::abs(tested(pair) - truth));
    out.worst = error <= out.worst ? out.worst : error;  // a NaN is taken, too
    out.overlapping += truth < 0 ? 1.0 / pairs : 0.0;
  }
  return out;
}

}  // namespace

// Hand formulas: common practice, no source.
TEST_CASE("distance: discs, capsules and corners follow the hand formulas", "[geometry]") {
  const RoundedPolygon disc = make_disc({3, 4}, 0.5);
  CHECK(here(make_disc({0, 0}, 1), disc) == Approx(3.5).margin(kRounding));
  CHECK(here(make_disc({3, 3.9}, 1), disc) == Approx(0.1 - 1.5).margin(kRounding));
  CHECK(here(make_capsule({0, 0}, {6, 0}, 0), disc) == Approx(3.5).margin(kRounding));
  CHECK(here(make_capsule({0, 0}, {0, -1}, 0.25), disc) == Approx(4.25).margin(kRounding));
  // The line 3x + 4y = 50 lies 10 from the origin; the segment on it from (10, 5) to (6, 8) has its foot (6, 8) there.
  CHECK(here(make_capsule({10, 5}, {6, 8}, 2), make_disc({0, 0}, 1)) == Approx(7.0).margin(kRounding));
  // A rounded box whose corner (1, 1) faces the end (4, 5) of a capsule: 5 between the cores.
  const RoundedPolygon box = make_rounded_polygon({{0, 0}, {1, 0}, {1, 1}, {0, 1}}, 0.75);
  CHECK(here(box, make_capsule({4, 5}, {9, 9}, 1.5)) == Approx(5 - 0.75 - 1.5).margin(kRounding));
  // A disc's centre inside the core, 0.2 below the top edge: out by the nearest edge.
  CHECK(here(box, make_disc({0.5, 0.8}, 0.1)) == Approx(-0.2 - 0.85).margin(kRounding));
}

TEST_CASE("distance: crossing cores are apart by minus the least shift that frees them", "[geometry]") {
  const RoundedPolygon box = make_box({0, 0}, {2, 1});
  CHECK(here(box, make_box({1.5, -5}, {3, 5})) == Approx(-0.5).margin(kRounding));
  CHECK(here(box, box) == Approx(-1.0).margin(kRounding));
  CHECK(here(box, make_box({0.5, 0.25}, {1.5, 0.75})) == Approx(-0.75).margin(kRounding));
  CHECK(here(make_capsule({-1, 0}, {1, 0}, 0.5), make_capsule({0, -2}, {0, 1}, 0.5)) == Approx(-2.0).margin(kRounding));
}

TEST_CASE("distance: touching cores are 0 apart", "[geometry]") {
  const RoundedPolygon box = make_box({0, 0}, {2, 1});
  CHECK(here(box, make_box({2, 0.5}, {3, 2})) == 0.0);
  CHECK(here(box, make_box({2, 1}, {3, 2})) == 0.0);
  CHECK(here(box, make_disc({1, 1}, 0)) == 0.0);
  CHECK(here(make_capsule({0, 0}, {1, 0}, 0), make_capsule({0.5, 0}, {3, 0}, 0)) == 0.0);
}

TEST_CASE("distance: capsules on one line, beyond each other's end, are apart", "[geometry]") {
  for (const double tilt : {0.0, 1e-17, -1e-17, 1e-16, 3e-16, 1e-12}) {
    for (int turn = 0; turn < 360; ++turn) {
      const Pose2 X_WA = make_pose({5, 5}, turn * std::numbers::pi / 180);
      const Pose2 X_AB{{2, 0}, 1.0, tilt};
      const RoundedPolygon capsule = make_capsule({0, 0}, {1, 0}, 0.1);
      REQUIRE(distance(capsule, X_WA, capsule, X_WA * X_AB) == Approx(0.8).margin(kRounding));
      REQUIRE(distance(capsule, X_WA, capsule, moved(X_WA, X_WA.turn({0.5, 0.3}))) == Approx(0.1).margin(kRounding));
    }
  }
}

TEST_CASE("distance: equals the slow long-double reference on a million pairs", "[geometry]") {
  const Comparison c = compare_with_slow(kernel, 1'000'000, 1);
  CHECK(c.worst <= kRounding);
  CHECK(c.overlapping > 0.3);
  CHECK(c.overlapping < 0.7);
}

TEST_CASE("distance: the comparison with the slow reference catches broken kernels", "[geometry]") {
  CHECK(compare_with_slow(kernel_missing_an_edge, 10'000, 2).worst > 1e-3);
  CHECK(compare_with_slow(kernel_blind_to_depth, 10'000, 2).worst > 1e-3);
  CHECK(compare_with_slow(kernel_blind_to_equals, 10'000, 2).worst > 1e-3);
  CHECK(compare_with_slow([](const Pair& p) { return kernel(p) + 2e-12; }, 10'000, 2).worst > kRounding);
}

TEST_CASE("distance: is symmetric and does not change when both outlines move together", "[geometry]") {
  std::mt19937 random(3);
  double worst_swap = 0.0, worst_move = 0.0;
  for (int i = 0; i < 100'000; ++i) {
    const Pair p = random_pair(random);
    const double d = kernel(p);
    const Pose2 X = make_pose({uniform(random, -1, 1), uniform(random, -1, 1)}, uniform(random, -4, 4));
    worst_swap = std::max(worst_swap, std::abs(distance(p.b, p.X_WB, p.a, p.X_WA) - d));
    worst_move = std::max(worst_move, std::abs(distance(p.a, X * p.X_WA, p.b, X * p.X_WB) - d));
  }
  CHECK(worst_swap <= kRounding);
  CHECK(worst_move <= kRounding);
}

TEST_CASE("distance: changes by no more than a shift, overlapping or not", "[geometry]") {
  std::mt19937 random(4);
  double worst = 0.0;
  for (int i = 0; i < 100'000; ++i) {
    const Pair p = random_pair(random);
    const double reach = std::pow(10.0, uniform(random, -9, 0));
    const Vec2 shift{uniform(random, -reach, reach), uniform(random, -reach, reach)};
    worst = std::max(worst, std::abs(distance(p.a, moved(p.X_WA, shift), p.b, p.X_WB) - kernel(p)) - norm(shift));
  }
  CHECK(worst <= kRounding);
}

TEST_CASE("distance: scaling by a power of two scales it to the last bit", "[geometry]") {
  std::mt19937 random(5);
  int unequal = 0;
  for (int i = 0; i < 20'000; ++i) {
    Pair p = random_pair(random);
    const double d = kernel(p), k = std::ldexp(1.0, static_cast<int>(uniform(random, -12, 12)));
    for (RoundedPolygon* o : {&p.a, &p.b}) {
      for (Vec2& v : o->core) v = k * v;
      o->radius *= k;
    }
    p.X_WA.p = k * p.X_WA.p;
    p.X_WB.p = k * p.X_WB.p;
    unequal += kernel(p) == k * d ? 0 : 1;
  }
  CHECK(unequal == 0);
}

TEST_CASE("separation: the witness points lie on both outlines, the distance apart", "[geometry]") {
  std::mt19937 random(6);
  double worst_span = 0.0, worst_a = 0.0, worst_b = 0.0;
  int unequal = 0;
  for (int i = 0; i < 100'000; ++i) {
    const Pair p = random_pair(random);
    const Separation s = separation(outline(p.a, p.X_WA), outline(p.b, p.X_WB));
    unequal += s.distance == kernel(p) ? 0 : 1;
    worst_span = std::max(worst_span, std::abs(norm(s.on_b - s.on_a) - std::abs(s.distance)));
    // On the outline itself, or within it where rounded outlines overlap by more than a core's thickness.
    worst_a = std::max(worst_a, distance(p.a, p.X_WA, make_disc(s.on_a, 0), kHere));
    worst_b = std::max(worst_b, distance(p.b, p.X_WB, make_disc(s.on_b, 0), kHere));
  }
  CHECK(unequal == 0);
  CHECK(worst_span <= kRounding);
  CHECK(worst_a <= kRounding);
  CHECK(worst_b <= kRounding);
}

TEST_CASE("separation: shifting by the depth along the witness frees overlapping outlines", "[geometry]") {
  std::mt19937 random(7);
  double worst_freed = 0.0, most_gained = 0.0;
  int overlapping = 0;
  while (overlapping < 20'000) {
    const Pair p = random_pair(random);
    const Separation s = separation(outline(p.a, p.X_WA), outline(p.b, p.X_WB));
    if (s.distance > -1e-6) continue;  // shallower, the direction drowns in rounding
    ++overlapping;
    const Vec2 out = (1.0 / norm(s.on_a - s.on_b)) * (s.on_a - s.on_b);  // B leaves A this way
    const double beyond = 1e-3 - s.distance;
    worst_freed = std::max(worst_freed, std::abs(distance(p.a, p.X_WA, p.b, moved(p.X_WB, beyond * out)) - 1e-3));
    const double angle = uniform(random, -4, 4);
    const Vec2 other{std::cos(angle), std::sin(angle)};
    most_gained = std::max(most_gained, distance(p.a, p.X_WA, p.b, moved(p.X_WB, -s.distance * other)));
  }
  CHECK(worst_freed <= 1e-9);       // the direction is known to 1e-15 m / 1e-6 m
  CHECK(most_gained <= kRounding);  // no other shift of that length does better
}

TEST_CASE("separation: two discs with one centre still get a direction", "[geometry]") {
  const Separation s = separation(Outline(make_disc({1, 2}, 0.5)), Outline(make_disc({1, 2}, 0.25)));
  CHECK(s.distance == -0.75);
  CHECK(norm(s.on_b - s.on_a) == Approx(0.75).margin(kRounding));
}

TEST_CASE("outline: one that held another body before forgets it", "[geometry]") {
  std::mt19937 random(8);
  Outline used;
  for (int i = 0; i < 10'000; ++i) {
    const Pair p = random_pair(random);
    used.place(Outline(p.a), p.X_WA);
    REQUIRE(signed_distance(used, outline(p.b, p.X_WB)) == kernel(p));
  }
}

TEST_CASE("outline: set_capsule is the capsule, or the disc where both ends meet", "[geometry]") {
  std::mt19937 random(9);
  Outline rope(make_box({0, 0}, {1, 1}));
  for (int i = 0; i < 10'000; ++i) {
    const Vec2 a{uniform(random, -1, 1), uniform(random, -1, 1)};
    const Vec2 b = i % 4 == 0 ? a : Vec2{uniform(random, -1, 1), uniform(random, -1, 1)};
    rope.set_capsule(a, b, 0.01);
    const Outline other(random_outline(random));
    REQUIRE(signed_distance(rope, other) == signed_distance(Outline(make_capsule(a, b, 0.01)), other));
    REQUIRE(rope.vertices() == (a == b ? 1 : 2));
    REQUIRE(norm(rope.disc().centre - a) + 0.01 <= rope.disc().radius + kRounding);
  }
}

}  // namespace stowpath
