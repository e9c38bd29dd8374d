#include "sim/clearance/proof.h"

#include <catch2/catch.hpp>

#include <cmath>

#include "tests/support/proof_maker.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

double lean_at(const ProofMaker& maker, double u) { return at(maker.linkage, maker.segment, u).lean; }

// A corner at radius R swings past a disc whose nearest point stands `beyond` outside the corner's circle.
ProofMaker corner_past_disc(double R, double r, double beyond, double half_turn) {
  ProofMaker maker = ProofMaker::swing(-half_turn, half_turn);
  maker.part(make_rounded_polygon({{0.0, -0.1}, {R, 0.0}, {0.0, 0.1}}, 0.0));
  maker.post(make_disc(on_arc(R + r + beyond, 0.0), r));
  return maker;
}

}  // namespace

TEST_CASE("proof: a swinging bar touches a post where its perpendicular distance says", "[clearance]") {
  const double h = 0.03, r = 0.02, m = 0.012, rho = 1.7, post = 1.1;
  ProofMaker maker = ProofMaker::swing(0.0, 1.4);
  maker.part(make_capsule({0.0, 0.0}, {2.0, 0.0}, h)).post(make_disc(on_arc(rho, post), r)).margin(m);
  const Proof proof = maker.proof();
  REQUIRE(proof.spans.size() == 1);
  CHECK(proof.spans[0].verdict == Verdict::interference);
  const double half = std::asin((h + r + m) / rho);
  CHECK(std::abs(lean_at(maker, proof.spans[0].u0) - (post - half)) < 1e-6);  // the promise of design.md, section 3
  CHECK(std::abs(lean_at(maker, proof.spans[0].u1) - (post + half)) < 1e-6);
  CHECK(proof.spans[0].open0 <= proof.spans[0].u0);
  CHECK(proof.spans[0].u1 <= proof.spans[0].open1);
}

TEST_CASE("proof: a stair comes down on the floor at the lean of the closed form", "[clearance]") {
  // atan2(2.5, 70) + acos(60 / hypot(70, 2.5)) for a section 70 in long, 5 in deep, 60 in above the floor.
  ProofMaker maker = ProofMaker::swing(60.0 * kDegree, 0.0);
  maker.part(make_box({0.0, -2.5 * kInch}, {70.0 * kInch, 2.5 * kInch}));
  maker.post(make_box({-9.0, -70.0 * kInch}, {9.0, -60.0 * kInch}));
  const Proof proof = maker.proof();
  REQUIRE(proof.spans.size() == 1);
  CHECK(proof.spans[0].verdict == Verdict::interference);
  CHECK(std::abs(lean_at(maker, proof.spans[0].u0) / kDegree - 33.108823386774) < 1e-6 / kDegree);
  CHECK(proof.spans[0].u1 == 1.0);
}

TEST_CASE("proof: a corner that passes a disc by a micro-inch is clear, and one that grazes it is not", "[clearance]") {
  const double R = 138.0 * kInch, r = 1.0 * kInch, delta = 1e-6 * kInch, half_turn = 1e-3;
  ProofOptions fine;
  fine.resolution = 1e-9;  // moves the corner by 3.5e-9 m, well under delta = 2.5e-8 m
  CHECK(verdict(corner_past_disc(R, r, delta, half_turn).proof(fine)) == Verdict::clear);

  ProofMaker maker = corner_past_disc(R, r, -delta, half_turn);
  const Proof proof = maker.proof(fine);
  REQUIRE(proof.spans.size() == 1);
  CHECK(proof.spans[0].verdict == Verdict::interference);
  const double c = R + r - delta, blocked = std::acos((R * R + c * c - r * r) / (2.0 * R * c));
  CHECK(blocked == Approx(1.02e-5).epsilon(0.01));  // three digits are printed in the source of the number
  // acos loses half its digits so close to 1: 1e-16 / 1e-5 = 1e-11; the bisection stops at 1e-9 of the move.
  CHECK(std::abs(lean_at(maker, proof.spans[0].u0) + blocked) < 1e-9);
  CHECK(std::abs(lean_at(maker, proof.spans[0].u1) - blocked) < 1e-9);
}

TEST_CASE("proof: a tip's distance from the pivot follows the law of cosines in the fold", "[clearance]") {
  // |tip|² = A² + B² + 2 A B cos(fold): 97.672924 in at 90 degrees, 6 in at 180.
  ProofMaker maker;
  maker.linkage.sections = 2;
  maker.linkage.length = {72.0 * kInch, 66.0 * kInch, 0.0};
  maker.segment.from.lean = maker.segment.to.lean = 0.5;
  maker.segment.to.folds[0] = 180.0 * kDegree;
  maker.part(make_disc({66.0 * kInch, 0.0}, 0.0), 1).post(make_disc({0.0, 0.0}, 0.0));
  for (const double sign : {-1.0, 1.0}) {
    maker.linkage.fold_sign[0] = sign;
    CHECK(std::abs(maker.at(0.0).clearance / kInch - 138.0) < 1e-10);
    CHECK(std::abs(maker.at(0.5).clearance / kInch - 97.672924) < 5e-7);  // six decimals are printed
    CHECK(std::abs(maker.at(1.0).clearance / kInch - 6.0) < 1e-10);
  }
  const Least least = maker.least(1e-7);
  CHECK(least.at_least <= 6.0 * kInch);
  CHECK(least.at_most >= 6.0 * kInch - 1e-12);
  CHECK(least.at_most - least.at_least <= 1e-7);
}

TEST_CASE("proof: the second section's tip stands as high as its two leans say", "[clearance]") {
  // -A cos(29 deg) - B cos(29 deg), A = 72 in, B = 66 in: 120.697520 in below the rail.
  ProofMaker maker;
  maker.linkage.sections = 2;
  maker.linkage.length = {72.0 * kInch, 66.0 * kInch, 0.0};
  maker.segment.from.lean = maker.segment.to.lean = 29.0 * kDegree;
  maker.part(make_disc({66.0 * kInch, 0.0}, 0.0), 1).post(make_box({-9.0, 0.0}, {9.0, 1.0}));
  CHECK(std::abs(maker.at(0.0).clearance / kInch - 120.697520) < 5e-7);
}

TEST_CASE("proof: sections folded on a hinge half an inch off their faces lie one inch apart", "[clearance]") {
  ProofMaker maker;
  maker.linkage.sections = 2;
  maker.linkage.length = {72.0 * kInch, 66.0 * kInch, 0.0};
  maker.linkage.hinge_across[0] = -3.0 * kInch;  // faces at 2.5 in
  maker.segment.to.folds[0] = 180.0 * kDegree;
  maker.segment.stations = {0.0, 0.0};
  maker.base = 0;
  maker.part(make_box({1.0 * kInch, -2.5 * kInch}, {66.0 * kInch, 2.5 * kInch}), 1);
  maker.post(make_box({0.0, -2.5 * kInch}, {72.0 * kInch, 2.5 * kInch}));
  CHECK(std::abs(maker.at(1.0).clearance / kInch - 1.0) < 1e-12);
  maker.segment.from.folds[0] = 170.0 * kDegree;
  CHECK(verdict(maker.margin(0.95 * kInch).proof()) == Verdict::clear);
  CHECK(verdict(maker.margin(1.05 * kInch).proof()) == Verdict::interference);
}

TEST_CASE("proof: a margin two nanometres under the end's clearance is proven in a few looks", "[clearance]") {
  // The bar stops short of the post: its clearance falls all the way, so that each halving halves what is open.
  const double rho = 1.7, end = 1.0, clearance = rho * std::sin(0.1) - 0.05;
  ProofMaker maker = ProofMaker::swing(0.0, end);
  maker.part(make_capsule({0.0, 0.0}, {2.0, 0.0}, 0.03)).post(make_disc(on_arc(rho, end + 0.1), 0.02));
  ProofOptions fine;
  fine.resolution = 1e-11;
  const Proof kept = maker.margin(clearance - 2e-9).proof(fine);  // the guard for rounding takes 1e-9
  CHECK(verdict(kept) == Verdict::clear);
  CHECK(kept.counts.distances < 150);
  const Proof broken = maker.margin(clearance + 2e-9).proof(fine);
  CHECK(verdict(broken) == Verdict::interference);
  CHECK(broken.counts.distances < 400);
}

TEST_CASE("proof: the least clearance of a pair is enclosed, and found at its place", "[clearance]") {
  const double R = 2.0, r = 0.02, beyond = 0.0345;
  ProofMaker maker = corner_past_disc(R, r, beyond, 0.6);
  maker.segment.from.lean = -0.9;  // the least lies at u = 0.6
  const Least least = maker.least(1e-8);
  CHECK(least.at_least <= beyond + 1e-12);
  CHECK(least.at_most >= beyond - 1e-12);
  CHECK(least.at_most - least.at_least <= 1e-8);
  CHECK(std::abs(least.u - 0.6) < 1e-3);  // flat near its least: 1e-8 of depth is 1e-4 of turn
  const Least part = least_of_pair(maker.stage(), 0, 0, 0.0, 0.5, 1e-8);
  CHECK(std::abs(part.at_most - maker.at(0.5).clearance) < 1e-12);
}

TEST_CASE("proof: beyond the horizon the least clearance says no more than the horizon", "[clearance]") {
  const Least far = corner_past_disc(2.0, 0.02, 1.5, 0.6).least(1e-6, 1.0);
  CHECK(far.mover == -1);
  CHECK(far.at_least == 1.0);
  CHECK(far.at_most == 1.0);
}

TEST_CASE("proof: an overlap is not hidden by a shallower one that was met before", "[clearance]") {
  ProofMaker maker = ProofMaker::swing(0.0, 0.0);
  maker.part(make_box({0.0, -0.05}, {2.0, 0.05}));
  maker.post(make_box({0.04, -1.1}, {0.2, -1.0}));   // 0.01 m deep
  maker.post(make_box({-0.02, -0.6}, {0.2, -0.5}));  // 0.07 m deep
  const Least least = maker.least(1e-6);
  CHECK(std::abs(least.at_most + 0.07) < 1e-12);
  CHECK(least.at_least <= -0.07 + 1e-12);
  CHECK(least.target == 1);
}

TEST_CASE("proof: the ends of a violation are found whichever end of the bracket violates", "[clearance]") {
  ProofMaker maker = ProofMaker::swing(0.0, 1.4);
  maker.part(make_capsule({0.0, 0.0}, {2.0, 0.0}, 0.03)).post(make_disc(on_arc(1.7, 1.1), 0.02));
  const double half = std::asin(0.05 / 1.7);
  const double first = refine_edge(maker.stage(), 0, 0, 0.0, 1.1 / 1.4, 1);
  const double last = refine_edge(maker.stage(), 0, 0, 1.1 / 1.4, 1.0, 0);
  CHECK(std::abs(1.4 * first - (1.1 - half)) < 1e-6);
  CHECK(std::abs(1.4 * last - (1.1 + half)) < 1e-6);
  CHECK(maker.at(first).clearance < 0.0);
  CHECK(maker.at(last).clearance < 0.0);
}

TEST_CASE("proof: play leaves open what the nominal pose clears, and says so", "[clearance]") {
  ProofMaker maker = corner_past_disc(2.0, 0.02, 0.010, 0.3);
  CHECK(verdict(maker.margin(0.009).proof()) == Verdict::clear);
  const Proof open = maker.margin(0.009, 0.004).proof();
  REQUIRE(open.spans.size() == 1);
  CHECK(open.spans[0].verdict == Verdict::undecided);
  CHECK(verdict(maker.margin(0.011, 0.004).proof()) == Verdict::interference);
  // At rest between margin and need, play alone is the reason.
  maker.segment.from.lean = maker.segment.to.lean = 0.0;
  const Proof rest = maker.margin(0.009, 0.004).proof();
  REQUIRE(rest.spans.size() == 1);
  CHECK(rest.spans[0].by_play);
}

TEST_CASE("proof: a foot that cannot reach is never proven clear", "[clearance]") {
  ProofMaker maker = ProofMaker::swing(0.5, 1.5);
  maker.linkage.sections = 2;
  maker.segment.kind = SegmentKind::drag;
  maker.segment.drag = {0, {1.0, 0.0}, -5.0};
  maker.part(make_capsule({0.0, 0.0}, {2.0, 0.0}, 0.03), 1).post(make_disc({1.0, -1.0}, 0.02));
  CHECK(verdict(maker.proof()) == Verdict::undecided);
  CHECK(least_of_pair(maker.stage(), 0, 0, 0.0, 1.0, 1e-4).at_least < -1e9);
}
