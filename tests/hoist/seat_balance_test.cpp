#include "sim/hoist/seat_balance.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;

namespace {

double nearest(const SeatBalance& balance, const FrictionChoice& most, Vec2 force) {
  double least = 1e9;
  for (const double hook : {-1.0, 0.0, 1.0}) {
    for (const double hinge : {-1.0, 0.0, 1.0}) {
      for (const bool last : {false, true}) {
        const SeatEnd end = balance.end({hook * most.hook, hinge * most.hinge}, most.floor, last);
        if (end.balance == Balance::possible) least = std::min(least, norm(end.forces.hook - force));
      }
    }
  }
  return least;
}

// A bar of 2 m and 100 N, level, and a foot hanging from its end by a second one of 1 m and 60 N; the line holds at
// 1.5 m, straight up.
struct Propped {
  Move move;
  LiftRig rig;

  // The second bar leans out by `out`, its foot on the floor.
  explicit Propped(double out) {
    const double down = std::sqrt(1.0 - out * out);
    rig.linkage = {{0.0, 0.0}, 2, {2.0, 1.0}, {}, {-1.0}};
    rig.masses = {{100.0 / kGravity, {1.0, 0.0}, 0.0}, {60.0 / kGravity, {0.5, 0.0}, 0.0}};
    rig.line.points = {{0, {1.5, 0.0}, 0.0, false, false, "pick"}, {-1, {1.5, 3.0}, 0.0, false, true, "ceiling point"}};
    rig.floor_level = -down;
    Segment drag{SegmentKind::drag, {}, {}, {0, {1.0, 0.0}, -down}, {1.0, 0.0}};
    drag.from.lean = 0.5 * std::acos(-1.0);
    drag.from.folds[0] = drag.from.lean - std::asin(out);
    drag.to = drag.from;
    move.kind = MoveKind::drag;
    move.hooked_on = true;
    move.pinned = {false};
    move.segments = {drag};
  }
  SeatBalance balance() const { return SeatBalance(rig, {move, move.segments[0], 0.0}); }
};

}  // namespace

TEST_CASE("seat balance: the pipe's force is that of the statics, section by section", "[hoist]") {
  int compared = 0;
  for (const char* name : {"demo-cured", "costume-loft", "three-section"}) {
    const Scene scene = parse_scene(testing::rig_text(name), name);
    const Model model = build_model(scene);
    LiftRig rig = lift_rig(scene, model, FrictionEnd::most, 0.005);
    double weight = 0.0;
    for (const SectionMass& section : rig.masses) weight += kGravity * section.mass;
    for (const double floor : {0.0, 0.1, 0.3}) {
      rig.friction.floor = floor;
      for (const Move& move : model.moves) {
        if (!move.hooked_on || stands_over_stations(move)) continue;
        for (const Segment& segment : move.segments) {
          for (const double u : {0.0, 0.2, 0.5, 0.9}) {
            for (const Haul haul : {Haul::raising, Haul::lowering}) {
              const PosePlace place{move, segment, u};
              const Reactions found = pose_pull(rig, place, haul).reactions;
              if (!found.solvable || found.tension[0] < 0.0) continue;
              ++compared;
              INFO(name << ", move " << move.index << ", u " << u << ", floor " << floor);
              CHECK(nearest(SeatBalance(rig, place), rig.friction, found.hook) < 1e-6 * weight);
            }
          }
        }
      }
    }
  }
  CHECK(compared > 300);
}

// Moments about the hinge: 60 * out / 2 = N (out + k down); about the pivot: 100 + 60 (2 + out / 2) = 1.5 T + N (2 +
// out + k down).
TEST_CASE("seat balance: both ends of the floor's friction, worked out by hand", "[hoist]") {
  const double out = 0.6, down = 0.8, most = 0.3;
  const SeatBalance balance = Propped(out).balance();
  for (const double k : {-most, most}) {
    const double N = 30.0 * out / (out + k * down);
    const double T = (100.0 + 60.0 * (2.0 + 0.5 * out) - N * (2.0 + out + k * down)) / 1.5;
    REQUIRE(T > 0.0);
    double least = 1e9;
    for (const bool last : {false, true}) {
      const SeatEnd end = balance.end({}, most, last);
      REQUIRE(end.balance == Balance::possible);
      least = std::min(least, norm(end.forces.hook - Vec2{-k * N, 160.0 - T - N}));
    }
    CHECK(least < 1e-9);
  }
}

// Pushed in, the second bar is a strut whose thrust grows as friction comes to point at its hinge, at k = -out / down.
// It takes all of the load before that: the line is slack then, and friction takes no more.
TEST_CASE("seat balance: a foot that sticks ends where the line is just slack", "[hoist]") {
  const double out = 0.6, down = 0.8;
  const SeatBalance balance = Propped(out).balance();
  double slackest = 1e9, friction = 0.0;
  for (const bool last : {false, true}) {
    const SeatEnd end = balance.end({}, 2.0, last);
    REQUIRE(end.balance == Balance::possible);
    if (end.forces.line >= slackest) continue;
    slackest = end.forces.line;
    friction = end.forces.scrub / end.forces.floor;
  }
  CHECK(slackest == Approx(0.0).margin(1e-9));
  CHECK(friction > -out / down);
  const double N = 30.0 * out / (out + friction * down);
  CHECK(N * (2.0 + out + friction * down) == Approx(100.0 + 60.0 * (2.0 + 0.5 * out)).epsilon(1e-9));
}

TEST_CASE("seat balance: a line that pulls past the pivot's inside cannot hold a bar", "[hoist]") {
  Propped bar(0.6);
  bar.move.kind = MoveKind::lift;
  bar.move.segments[0].kind = SegmentKind::straight;
  bar.rig.line.points[0].at = {-0.2, 0.0};
  bar.rig.line.points[1].at = {-0.2, 3.0};
  CHECK(bar.balance().end({}, 0.0, false).balance == Balance::none);
  bar.rig.line.points[0].at = {1e-4, 0.0};  // a lever of 0.1 mm: forces of thousands of weights
  bar.rig.line.points[1].at = {1e-4, 3.0};
  CHECK(bar.balance().end({}, 0.0, false).balance == Balance::unbounded);
}
