#include <catch2/catch.hpp>

#include <cmath>
#include <functional>
#include <random>

#include "tests/support/proof_maker.h"
#include "tests/support/random_outlines.h"

using namespace stowpath;
using namespace stowpath::testing;

// Rods and wires 1 mm thick: between two poses looked at they pass each other unseen, unless the bound on the motion
// between is right.
namespace {

constexpr double kThin = 0.0005;  // radius [m]
constexpr int kWires = 1000;

struct Count {
  int not_clear = 0, interference = 0;
};

/// Sets one wire after another where `place` says and counts what is proven of them.
Count count(ProofMaker maker, double scale, double resolution, const std::function<Vec2(std::mt19937&)>& place) {
  std::mt19937 random(17);
  ProofOptions options;
  options.bound_scale = scale;
  options.resolution = resolution;
  Count out;
  for (int n = 0; n < kWires; ++n) {
    maker.targets.clear();
    maker.post(make_disc(place(random), kThin));
    const Verdict v = verdict(maker.proof(options));
    out.not_clear += v != Verdict::clear;
    out.interference += v == Verdict::interference;
  }
  return out;
}

constexpr double kUsual = 0.01 * kDegree, kFine = 1e-5;  // 1e-5 rad moves a tip by less than 0.05 mm

/// A point of the mover's centre line at a random u: the wire stands in its way.
std::function<Vec2(std::mt19937&)> on_path(const ProofMaker& maker, int body, double from, double to,
                                           double crowding = 1.0) {
  return [maker = ProofMaker(maker), body, from, to, crowding](std::mt19937& random) mutable {
    const double u = 1.0 - std::pow(uniform(random, 0.0, 1.0), crowding);
    return snapshot(maker.stage(), u).of(body) * Vec2{uniform(random, from, to), 0.0};
  };
}

void check_found(const ProofMaker& maker, const std::function<Vec2(std::mt19937&)>& place, double broken_scale) {
  const Count right = count(maker, 1.0, kUsual, place);
  CHECK(right.not_clear == kWires);
  CHECK(right.interference == kWires);
  CHECK(count(maker, broken_scale, kUsual, place).not_clear < kWires);  // a broken bound is seen
}

void check_beside(const ProofMaker& maker, const std::function<Vec2(std::mt19937&)>& place) {
  CHECK(count(maker, 1.0, kUsual, place).interference == 0);
  CHECK(count(maker, 1.0, kFine, place).not_clear == 0);
}

ProofMaker swinging_rod() {
  ProofMaker maker = ProofMaker::swing(0.0, 2.0);
  return maker.part(make_capsule({0.0, 0.0}, {2.0, 0.0}, kThin));
}

ProofMaker hanging_rod() {
  ProofMaker maker = ProofMaker::swing(0.3, 1.1);
  maker.linkage.sections = 2;
  maker.linkage.length = {1.8, 1.5, 0.0};
  maker.segment.from.folds[0] = 0.3;
  maker.segment.to.folds[0] = 1.1;
  return maker.part(make_capsule({0.0, 0.0}, {1.5, 0.0}, kThin), 1);
}

/// The lower of two sections, dragged until the foot is plumb under the hinge, where its lean's rate is infinite.
ProofMaker dragged_rod() {
  ProofMaker maker;
  maker.linkage = {{0.975, 2.9}, 2, {1.79, 1.44, 0.0}, {}, {-1.0, 0.0}};
  Segment& drag = maker.segment;
  drag.kind = SegmentKind::drag;
  drag.drag = {0, {1.46, 0.0}, 0.0375};
  drag.from.lean = 0.5;
  drag.to.lean = std::acos((2.9 - 0.0375 - 1.46) / 1.79);
  return maker.part(make_capsule({0.0, 0.0}, {1.46, 0.0}, kThin), 1);
}

}  // namespace

TEST_CASE("wires: every wire in a swinging rod's way is found, and fewer with a broken bound", "[clearance]") {
  const ProofMaker maker = swinging_rod();
  check_found(maker, on_path(maker, 0, 0.2, 2.0), 0.5);
  check_found(maker, on_path(maker, 0, 1.9, 2.0), 0.9);  // close to the tip the bound has no slack
}

TEST_CASE("wires: none beside a swinging rod's way is called hit", "[clearance]") {
  check_beside(swinging_rod(),
               [](std::mt19937& random) { return on_arc(2.0 + 2.0 * kThin + 0.0005, uniform(random, 0.0, 2.0)); });
}

TEST_CASE("wires: every wire in a hanging section's way is found, and none beside it is called hit", "[clearance]") {
  const ProofMaker maker = hanging_rod();
  check_found(maker, on_path(maker, 1, 0.0, 1.5), 0.5);
  // The section shifts without turning: what it sweeps ends below on an arc about a point 1.5 m under the pivot.
  check_beside(maker, [](std::mt19937& random) {
    return Vec2{0.0, -1.5} + on_arc(1.8 + 2.0 * kThin + 0.0005, uniform(random, 0.3, 1.1));
  });
}

TEST_CASE("wires: every wire in a dragged section's way is found, plumb or not", "[clearance]") {
  const ProofMaker maker = dragged_rod();
  check_found(maker, on_path(maker, 1, 0.0, 1.46), 0.5);
  check_found(maker, on_path(maker, 1, 0.2, 1.46, 6.0), 0.5);  // crowded towards full stretch
}

TEST_CASE("wires: none under a dragged foot is called hit", "[clearance]") {
  ProofMaker maker = dragged_rod();
  const double first = snapshot(maker.stage(), 0.0).of(1).p.x, last = snapshot(maker.stage(), 1.0).of(1).p.x;
  check_beside(maker, [=](std::mt19937& random) {
    return Vec2{uniform(random, first - 0.5, last + 1.0), 0.0375 - 2.0 * kThin - 0.0005};
  });
}

TEST_CASE("wires: every wire in the way of a rope between room and stair is found", "[clearance]") {
  ProofMaker maker = ProofMaker::swing(0.2, 1.5);
  maker.rope({kRoom, {1.5, 1.2}}, {0, {1.7, 0.0}}, kThin);
  const auto place = [maker](std::mt19937& random) mutable {
    const Snapshot now = snapshot(maker.stage(), uniform(random, 0.0, 1.0));
    return lerp(now.of(kRoom) * Vec2{1.5, 1.2}, now.of(0) * Vec2{1.7, 0.0}, uniform(random, 0.05, 1.0));
  };
  check_found(maker, place, 0.5);
}

TEST_CASE("wires: a section sees every wire that a further one carries past it", "[clearance]") {
  ProofMaker maker;
  maker.linkage.sections = 2;
  maker.linkage.length = {1.8, 1.5, 0.0};
  maker.segment.to.folds[0] = 3.0;
  maker.segment.stations = {0.0, 0.0};
  maker.base = 0;
  maker.part(make_capsule({0.0, 0.0}, {1.5, 0.0}, kThin), 1);
  check_found(maker, on_path(maker, 1, 0.2, 1.5), 0.5);
}

TEST_CASE("wires: a plate 1/64 in thick across the rail is met by a rolling stair, and missed beside it",
          "[clearance]") {
  std::mt19937 random(23);
  const double thick = kInch / 64.0;
  int found = 0, free = 0;
  for (int n = 0; n < kWires; ++n) {
    ProofMaker maker = ProofMaker::swing(0.2, 0.2 + (n % 2 ? 0.3 : 0.0));
    maker.segment.from.station = 1.0;
    maker.segment.to.station = 6.0;
    const double half = 0.0005;
    maker.part(make_capsule({0.0, 0.0}, {2.0, 0.0}, kThin), 0, {{-half, half}});
    // Where the stair passes at u its own prism is 1 mm long, the plate 0.4 mm.
    const double u = uniform(random, 0.01, 0.99), s = 1.0 + 5.0 * u;
    const Vec2 at = snapshot(maker.stage(), u).of(0) * Vec2{uniform(random, 0.2, 2.0), 0.0};
    maker.post(make_disc(at, 0.01), {{s - 0.5 * thick, s + 0.5 * thick}});
    found += verdict(maker.proof()) == Verdict::interference;
    maker.targets.clear();
    maker.post(make_disc(at, 0.01), {{7.0, 7.0 + thick}});
    free += verdict(maker.proof()) == Verdict::clear;
  }
  CHECK(found == kWires);
  CHECK(free == kWires);
}

TEST_CASE("wires: a roll stops short of a plate by what the closed form says", "[clearance]") {
  // 3-4-5: side views 3 m apart and a margin of 5 m forbid a gap under 4 m.
  for (const double beyond : {-1e-6, 1e-6}) {
    ProofMaker maker;
    maker.part(make_disc({0.0, 0.0}, 0.0), 0, {{-0.25, 0.25}}).post(make_disc({3.0, 0.0}, 0.0), {{20.0, 20.0004}});
    maker.margin(5.0);
    maker.segment.stations = {1.0, 20.0 - 4.0 - 0.25 - beyond};
    CHECK(verdict(maker.proof()) == (beyond > 0.0 ? Verdict::clear : Verdict::interference));
  }
}
