#include <catch2/catch.hpp>
#include <cmath>
#include <functional>

#include "tests/reference/fcl_prism.h"
#include "tests/support/random_outlines.h"

namespace stowpath::testing {
namespace {

constexpr double kNear = 0.1;    // [m]
constexpr double kAgree = 1e-9;  // [m]: where FCL is asked for 1e-12 m it reaches 1e-15, but nothing promises it

struct PrismPair {
  Prism a, b;
};

RoundedPolygon random_box(std::mt19937& random) {
  const Vec2 least{uniform(random, -0.5, 0.0), uniform(random, -0.5, 0.0)};
  return make_box(least, {uniform(random, 0.05, 0.5), uniform(random, 0.05, 0.5)});
}

RoundedPolygon random_polygon(std::mt19937& random) {
  for (;;) {
    RoundedPolygon outline = random_outline(random);
    outline.radius = 0.0;
    if (outline.core.size() > 2) return outline;
  }
}

PrismPair random_prisms(std::mt19937& random, const std::function<RoundedPolygon(std::mt19937&)>& outline) {
  const auto prism = [&](double spread) {
    const RoundedPolygon shape = outline(random);
    const Pose2 X_WB =
        make_pose({uniform(random, -spread, spread), uniform(random, -spread, spread)}, uniform(random, -4, 4));
    const double lo = uniform(random, -0.6, 0.6);  // never level with another's end: see below
    return Prism{shape, X_WB, {lo, lo + uniform(random, 0.05, 0.8)}};
  };
  const double spread = uniform(random, 0.05, 0.5);
  const Prism a = prism(spread), b = prism(spread);
  return {a, b};
}

/// How FCL is asked. Its distance tolerance is 1e-6 m unless told otherwise.
struct Way {
  Solver solver = fcl::GST_LIBCCD;
  double tolerance = 1e-12;
  bool boxes = false;
};

struct Opinion {
  double distance = 0.0;
  bool overlap = false;
};

Opinion ask(const PrismPair& p, const Way& way) {
  const auto put = [&](const auto& a, const fcl::Transform3d& X_WA, const auto& b, const fcl::Transform3d& X_WB) {
    return Opinion{fcl_distance(a, X_WA, b, X_WB, way.solver, way.tolerance),
                   fcl_overlap(a, X_WA, b, X_WB, way.solver)};
  };
  if (way.boxes) return put(fcl_box(p.a), fcl_box_pose(p.a), fcl_box(p.b), fcl_box_pose(p.b));
  return put(fcl_convex(p.a), fcl_pose(p.a.X_WB), fcl_convex(p.b), fcl_pose(p.b.X_WB));
}

struct Tally {
  int pairs = 0, overlapping = 0, near = 0;
  int overlap_disputed = 0;  // though they overlap, or are apart, by more than rounding
  int disputed = 0;          // distances
  int settled_for_us = 0;    // of those, by alternating projections
};

bool third_method_agrees(const PrismPair& p, double ours) {
  const Enclosure third = alternating_projections(p.a, p.b, kAgree, 1'000'000);
  return third.at_most - third.at_least <= kAgree && third.at_least - kAgree <= ours && ours <= third.at_most + kAgree;
}

void compare(const PrismPair& p, const Opinion& fcl, Tally& tally) {
  const double ours = prism_distance(p.a, p.b), deep = prism_overlap(p.a, p.b);
  const bool overlap = deep > 0.0;
  ++tally.pairs;
  if ((overlap ? deep : ours) > kAgree && fcl.overlap != overlap) ++tally.overlap_disputed;
  tally.overlapping += overlap ? 1 : 0;
  if (overlap) return;
  tally.near += ours < kNear ? 1 : 0;
  if (std::abs(std::max(fcl.distance, 0.0) - ours) <= kAgree) return;
  ++tally.disputed;
  tally.settled_for_us += third_method_agrees(p, ours) ? 1 : 0;
}

Tally tally_of(int pairs, unsigned seed, const Way& way) {
  std::mt19937 random(seed);
  Tally out;
  for (int i = 0; i < pairs; ++i) {
    const PrismPair p = random_prisms(random, way.boxes ? random_box : random_polygon);
    compare(p, ask(p, way), out);
  }
  // Few draws tell nothing where nearly all overlap, or nearly none come near.
  CHECK(out.overlapping > 0.3 * pairs);
  CHECK(out.overlapping < 0.7 * pairs);
  CHECK(out.near > 0.1 * pairs);
  return out;
}

}  // namespace

TEST_CASE("prisms: the distance and the overlap are FCL's, for convex outlines", "[reference]") {
  const Tally t = tally_of(100'000, 1, {});
  CHECK(t.overlap_disputed == 0);
  CHECK(t.disputed == 0);
}

TEST_CASE("prisms: the distance and the overlap are FCL's, for boxes", "[reference]") {
  const Tally t = tally_of(100'000, 2, {fcl::GST_LIBCCD, 1e-12, true});
  CHECK(t.overlap_disputed == 0);
  CHECK(t.disputed == 0);
}

// Trap: at its own tolerance FCL's distance is up to centimetres off where convex outlines are far apart.
TEST_CASE("prisms: where FCL at its own tolerance differs, projections settle it for us", "[reference]") {
  const Tally t = tally_of(20'000, 3, {fcl::GST_LIBCCD, 1e-6, false});
  CHECK(t.overlap_disputed == 0);
  CHECK(t.disputed > 0);
  CHECK(t.settled_for_us == t.disputed);
}

// Trap: FCL's own solver is up to 37 mm off on slivers and many-cornered outlines, near ones too.
TEST_CASE("prisms: where FCL's own solver differs, projections settle it for us", "[reference]") {
  const Tally t = tally_of(20'000, 4, {fcl::GST_INDEP, 1e-12, false});
  CHECK(t.overlap_disputed == 0);
  CHECK(t.disputed > 0);  // else the trap is gone: let this test ask as much as the first
  CHECK(t.settled_for_us == t.disputed);
}

TEST_CASE("prisms: the comparison catches poses that are a micrometre off", "[reference]") {
  std::mt19937 random(5);
  int caught = 0;
  for (int i = 0; i < 1000; ++i) {
    PrismPair p = random_prisms(random, random_polygon);
    const double before = prism_distance(p.a, p.b);
    p.b.stations = p.b.stations + 1e-6;
    p.b.X_WB.p = p.b.X_WB.p + Vec2{1e-6, 1e-6};
    const double fcl = ask(p, {}).distance;
    if (before > 0.0 && fcl > 0.0) caught += std::abs(fcl - before) > kAgree ? 1 : 0;
  }
  CHECK(caught > 300);
}

}  // namespace stowpath::testing
