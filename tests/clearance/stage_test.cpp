#include "sim/clearance/stage.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

#include "tests/support/proof_maker.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

double uniform(std::mt19937& random, double lo, double hi) {
  return std::uniform_real_distribution<double>(lo, hi)(random);
}

/// Greatest move of a section's point over the piece from where the piece's middle puts it, by looking at many poses.
double true_displacement(const ProofStage& stage, double u0, double u1, int body, Vec2 at_body) {
  const Vec2 middle = snapshot(stage, 0.5 * (u0 + u1)).of(body) * at_body;
  double most = 0.0;
  for (int k = 0; k <= 64; ++k) {
    most = std::max(most, norm(snapshot(stage, u0 + (u1 - u0) * k / 64).of(body) * at_body - middle));
  }
  return most;
}

double bound(const ProofStage& stage, double u0, double u1, int body, Vec2 at_body) {
  const Snapshot now = snapshot(stage, 0.5 * (u0 + u1));
  return displacement(stage, now, half_turns(stage.linkage, stage.segment, u0, u1), body, now.of(body) * at_body, 0.0);
}

/// Share of the bound that the true displacement takes up.
double share(const ProofStage& stage, double u0, double u1, int body, Vec2 at_body) {
  return true_displacement(stage, u0, u1, body, at_body) / bound(stage, u0, u1, body, at_body);
}

ProofMaker two_sections(double lean, double fold, double turn_lean, double turn_fold) {
  ProofMaker maker = ProofMaker::swing(lean, lean + turn_lean);
  maker.linkage.sections = 2;
  maker.linkage.length = {2.0, 1.5, 0.0};
  maker.segment.from.folds[0] = fold;
  maker.segment.to.folds[0] = fold + turn_fold;
  return maker;
}

ProofMaker random_chain(std::mt19937& random) {
  ProofMaker maker;
  maker.linkage.sections = 1 + static_cast<int>(random() % 3);
  for (std::size_t k = 0; k < 2; ++k) {
    maker.linkage.hinge_across[k] = uniform(random, -0.2, 0.2);
    maker.linkage.fold_sign[k] = random() % 2 ? 1.0 : -1.0;
    maker.segment.from.folds[k] = uniform(random, 0.0, 3.1);
    maker.segment.to.folds[k] = random() % 3 ? uniform(random, 0.0, 3.1) : maker.segment.from.folds[k];
  }
  maker.segment.from.lean = uniform(random, -0.3, 1.6);
  maker.segment.to.lean = random() % 3 ? uniform(random, -0.3, 1.6) : maker.segment.from.lean;
  maker.base = static_cast<int>(random() % static_cast<unsigned>(maker.linkage.sections + 1)) - 1;
  return maker;
}

}  // namespace

TEST_CASE("stage: nothing is displaced by more than the bound, seen from the room or from a section", "[clearance]") {
  std::mt19937 random(5);
  for (int n = 0; n < 5000; ++n) {
    ProofMaker maker = random_chain(random);
    const ProofStage stage = maker.stage();
    const int body = static_cast<int>(random() % static_cast<unsigned>(maker.linkage.sections + 1)) - 1;
    const double width = std::pow(uniform(random, 0.0, 1.0), 3.0), u0 = uniform(random, 0.0, 1.0 - width);
    const Vec2 point{uniform(random, -0.5, 3.0), uniform(random, -0.5, 0.5)};
    // Two placings of a point 10 m out differ by a few units in the last place.
    REQUIRE(true_displacement(stage, u0, u0 + width, body, point) <= bound(stage, u0, u0 + width, body, point) + 1e-13);
  }
}

// A bound that is nine tenths of the true one would be exceeded in each of the following.
TEST_CASE("stage: nested arcs leave no room where a folded chain turns about the pivot", "[clearance]") {
  ProofMaker maker = two_sections(0.3, 3.0, 0.1, 0.0);
  CHECK(share(maker.stage(), 0.0, 1.0, 1, {1.4, 0.05}) > 0.95);
  maker = two_sections(0.3, 0.0, 0.0, -0.1);
  CHECK(share(maker.stage(), 0.0, 1.0, 1, {1.4, 0.0}) > 0.95);
}

TEST_CASE("stage: nested arcs leave no room where a section sees the next one turn", "[clearance]") {
  ProofMaker maker = two_sections(0.3, 1.0, 0.7, 0.1);
  maker.base = 0;
  CHECK(share(maker.stage(), 0.0, 1.0, 1, {1.4, 0.05}) > 0.95);
  maker.base = 1;
  CHECK(share(maker.stage(), 0.0, 1.0, 0, {0.3, 0.05}) > 0.95);
  maker = two_sections(0.3, 0.0, 0.1, -0.1);  // pivot and hinge turn the room the same way, seen from the foot
  maker.base = 1;
  CHECK(share(maker.stage(), 0.0, 1.0, kRoom, {0.0, 3.0}) > 0.95);
}

TEST_CASE("stage: the chain of leans leaves no room where a lower section hangs or swings along", "[clearance]") {
  ProofMaker hang = two_sections(0.3, 0.3, 0.2, 0.2);  // the lower section's lean stays: it only shifts
  CHECK(share(hang.stage(), 0.0, 1.0, 1, {1.4, 0.05}) > 0.95);
  CHECK(bound(hang.stage(), 0.0, 1.0, 1, {1.4, 0.05}) < 2.0 * 0.1 * 1.0001);
  ProofMaker both = two_sections(0.3, 0.0, 0.05, -0.05);  // straight, and both joints turn outward
  CHECK(share(both.stage(), 0.0, 1.0, 1, {1.4, 0.0}) > 0.95);
}

TEST_CASE("stage: half-turns of a drag leave no room, close to plumb either", "[clearance]") {
  ProofMaker maker;
  maker.linkage = {{0.975, 2.9}, 2, {1.79, 1.44, 0.0}, {-0.082, 0.0}, {-1.0, 0.0}};
  Segment& drag = maker.segment;
  drag.kind = SegmentKind::drag;
  drag.drag = {0, {1.46, 0.02}, 0.0375};
  const HingeSwing swing = hinge_swing(maker.linkage, {}, 0);
  const double foot = norm(drag.drag.axle - maker.linkage.proximal(1));
  const double last = std::acos((2.9 - 0.0375 - foot) / swing.reach) - swing.phase;  // full stretch, foot plumb
  drag.from.lean = 0.5;
  drag.to.lean = last;
  for (const double u0 : {0.0, 0.5, 0.9, 0.99, 0.999}) {
    const double u1 = u0 == 0.999 ? 1.0 : u0 + 0.01;
    const Turns turns = half_turns(maker.linkage, drag, u0, u1);
    const Configuration a = at(maker.linkage, drag, u0), b = at(maker.linkage, drag, u1),
                        m = at(maker.linkage, drag, 0.5 * (u0 + u1));
    const double fold = std::max(std::abs(a.folds[0] - m.folds[0]), std::abs(b.folds[0] - m.folds[0]));
    CHECK(fold > 0.95 * turns.joint[1]);
    CHECK(fold <= turns.joint[1]);
    const double below = std::max(std::abs(section_leans(maker.linkage, a)[1] - section_leans(maker.linkage, m)[1]),
                                  std::abs(section_leans(maker.linkage, b)[1] - section_leans(maker.linkage, m)[1]));
    CHECK(below > 0.95 * turns.section[1]);
    CHECK(below <= turns.section[1]);
  }
}

TEST_CASE("stage: gaps and overlaps along the rail are those of the worst station", "[clearance]") {
  std::mt19937 random(9);
  for (int n = 0; n < 3000; ++n) {
    std::vector<Interval> moving, fixed;
    for (unsigned k = 0; k <= random() % 3; ++k) {
      const double lo = uniform(random, -1.0, 1.0);
      moving.push_back({lo, lo + uniform(random, 0.0, 0.5)});
    }
    for (unsigned k = 0; k <= random() % 3; ++k) {
      const double lo = uniform(random, -3.0, 3.0);
      fixed.push_back({lo, lo + uniform(random, 0.0, 0.5)});
    }
    const double lo = uniform(random, -2.0, 2.0), roll = random() % 2 ? uniform(random, 0.0, 2.0) : 0.0;
    const Interval stations{lo, lo + roll};
    const Gaps any = rail_gaps(moving, fixed, stations, true), every = rail_gaps(moving, fixed, stations, false);
    // Looked at one by one, 1000 stations in 2 m: the least is missed by at most 1e-3 m.
    double least = 1e9, overlapped = -1e9, greatest_least = 0.0, least_overlap = 1e9;
    for (int k = 0; k <= 1000; ++k) {
      const double s = k == 1000 ? stations.hi : stations.lo + roll * k / 1000;
      double here = 1e9, over = -1e9;
      for (const Interval i : moving) {
        for (const Interval j : fixed) here = std::min(here, gap(i + s, j)), over = std::max(over, overlap(i + s, j));
      }
      least = std::min(least, here);
      overlapped = std::max(overlapped, over);
      greatest_least = std::max(greatest_least, here);
      least_overlap = std::min(least_overlap, over);
    }
    REQUIRE(any.least <= least + 1e-12);
    REQUIRE(any.least >= least - 1.1e-3);
    REQUIRE(any.overlap >= overlapped - 1e-12);
    REQUIRE(any.overlap <= overlapped + 1.1e-3);
    REQUIRE(any.most <= least + 1.1e-3);  // at some station
    REQUIRE(any.least_overlap >= overlapped - 1.1e-3);
    REQUIRE(every.least == any.least);
    REQUIRE(every.most >= greatest_least - 1e-12);  // at every station
    REQUIRE(every.least_overlap <= least_overlap + 1e-12);
  }
}

TEST_CASE("stage: the side-view threshold is where the prisms' clearance passes the margin", "[clearance]") {
  std::mt19937 random(13);
  int scaled_is_wrong = 0;
  for (int n = 0; n < 20'000; ++n) {
    const bool apart = random() % 2;
    const double g = apart ? uniform(random, 0.0, 0.03) : 0.0, over = apart ? -g : uniform(random, 0.0, 0.03);
    const double margin = uniform(random, -0.01, 0.03), d = uniform(random, -0.04, 0.04);
    const double clearance = prism_clearance(d, g, over), threshold = side_view_threshold(margin, g, over);
    if (std::abs(clearance - margin) < 1e-12) continue;
    REQUIRE((clearance < margin) == (d < threshold));
    scaled_is_wrong += (clearance < margin) != (d < 0.9 * threshold);
  }
  CHECK(scaled_is_wrong > 100);  // a threshold that is too small by a tenth is seen
}

TEST_CASE("stage: the threshold is the leg of the right triangle", "[clearance]") {
  CHECK(side_view_threshold(5.0, 4.0, -4.0) == Approx(3.0).epsilon(1e-15));
  CHECK(side_view_threshold(5.0, 5.0, -5.0) == -std::numeric_limits<double>::infinity());
  CHECK(side_view_threshold(5.0, 0.0, 1.0) == 5.0);
  CHECK(side_view_threshold(0.0, 0.0, 1.0) == 0.0);
  CHECK(side_view_threshold(-0.2, 0.0, 0.1) == -std::numeric_limits<double>::infinity());
  CHECK(prism_clearance(3.0, 4.0, -4.0) == 5.0);
  CHECK(prism_clearance(-0.3, 0.0, 0.2) == -0.2);
  CHECK(prism_clearance(-0.1, 0.0, 0.2) == -0.1);
  CHECK(prism_clearance(-0.1, 0.7, -0.7) == 0.7);
}
