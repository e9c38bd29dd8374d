#include "sim/mechanism/course.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

using namespace stowpath;

namespace {

// A two-part stair on its casters: pivot 2.9 m up, axle 0.0375 m up, dragging from a straight chain.
struct Standing {
  Linkage linkage{{0.975, 2.9}, 2, {1.79, 1.44, 0.0}, {-0.082, 0.0}, {-1.0, 0.0}};
  Segment drag;

  explicit Standing(double to_lean, double sign = -1.0) {
    linkage.hinge_across[0] = sign * 0.082;
    linkage.fold_sign[0] = sign;
    drag.kind = SegmentKind::drag;
    drag.drag = {0, {1.46, 0.02}, 0.0375};
    const Vec2 straight{1.79 + 1.46, 0.02};
    drag.from.lean = std::acos((2.9 - 0.0375) / norm(straight)) - std::atan2(straight.y, straight.x);
    drag.to.lean = to_lean;
    drag.from.folds[0] = at(linkage, drag, 0.0).folds[0];
    drag.to.folds[0] = at(linkage, drag, 1.0).folds[0];
  }

  // Where the foot is at full stretch below the hinge.
  double last_lean() const {
    const HingeSwing swing = hinge_swing(linkage, {}, 0);
    const double reach = norm(drag.drag.axle - linkage.proximal(1));
    return std::acos((linkage.pivot.y - drag.drag.axle_height - reach) / swing.reach) - swing.phase;
  }
  Vec2 axle(double u) const { return place_sections(linkage, at(linkage, drag, u))[1] * drag.drag.axle; }
};

// From 0 to 1, both ends as often as everything between: bounds are first broken at ends.
double draw_with_ends(std::mt19937& random) {
  return std::clamp(std::uniform_real_distribution<double>(-1.0, 2.0)(random), 0.0, 1.0);
}

// By how much random places leave the bounds of random pieces, wide ones and down to 1e-12; infinite where one is no
// number.
double worst_excess(const Linkage& linkage, const Segment& segment, std::mt19937& random) {
  double worst = -1.0;
  const auto note = [&](double moved, double bound) {
    worst = std::isfinite(moved) ? std::max(worst, moved - bound) : std::numeric_limits<double>::infinity();
  };
  for (int n = 0; n < 100'000; ++n) {
    const double width = std::pow(10.0, -12.0 * draw_with_ends(random));
    const double u0 = (1.0 - width) * draw_with_ends(random), u1 = u0 + width;
    const Turns turns = half_turns(linkage, segment, u0, u1);
    const Configuration middle = at(linkage, segment, 0.5 * (u0 + u1));
    const Configuration there = at(linkage, segment, u0 + (u1 - u0) * draw_with_ends(random));
    const auto leans = section_leans(linkage, there), middle_leans = section_leans(linkage, middle);
    note(std::abs(there.station - middle.station), turns.station);
    note(std::abs(there.lean - middle.lean), turns.joint[0]);
    for (std::size_t k = 0; k < 2; ++k) note(std::abs(there.folds[k] - middle.folds[k]), turns.joint[k + 1]);
    for (std::size_t j = 0; j < 3; ++j) note(std::abs(leans[j] - middle_leans[j]), turns.section[j]);
  }
  return worst;
}

}  // namespace

TEST_CASE("course: a drag keeps the axle at its height", "[mechanism]") {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> unit(0.0, 1.0);
  for (const double sign : {-1.0, 1.0}) {
    const Standing standing(0.6, sign);
    REQUIRE(standing.drag.to.lean < standing.last_lean());
    CHECK(standing.drag.from.folds[0] == Approx(0.0).margin(1e-12));  // the chain starts straight
    for (int n = 0; n < 10'000; ++n)
      CHECK(standing.axle(unit(random)).y == Approx(0.0375).margin(1e-12));  // far above the rounding of sums of 3 m
  }
}

TEST_CASE("course: a drag ends with the foot at full stretch straight below the hinge", "[mechanism]") {
  const Standing standing(Standing(0.7).last_lean());
  const auto X_W = place_sections(standing.linkage, standing.drag.to);
  CHECK(standing.axle(1.0).y == Approx(0.0375).margin(1e-12));
  // The lean goes with the square root of the height there: 1e-15 m of rounding is 4e-8 rad.
  CHECK((X_W[1] * standing.drag.drag.axle).x == Approx((X_W[0] * standing.linkage.distal(0)).x).margin(2e-7));
}

TEST_CASE("course: a hinge out of reach of the floor has no drag lean", "[mechanism]") {
  const Standing standing(0.6);
  CHECK(std::isnan(drag_lean(standing.linkage, standing.drag.drag, 1.6)));
  CHECK(std::isfinite(drag_lean(standing.linkage, standing.drag.drag, 1.4)));
}

TEST_CASE("course: half_turns bounds every joint on pieces of a drag, up to full stretch", "[mechanism]") {
  std::mt19937 random(13);
  for (const double sign : {-1.0, 1.0}) {
    const Standing standing(Standing(0.7, sign).last_lean(), sign);
    CHECK(worst_excess(standing.linkage, standing.drag, random) <= 0.0);
  }
}

TEST_CASE("course: half_turns of a drag are not idle: a tenth less would be broken", "[mechanism]") {
  const Standing standing(Standing(0.7).last_lean());
  const Turns turns = half_turns(standing.linkage, standing.drag, 0.9, 1.0);
  const auto lower = [&](double u) {
    return section_leans(standing.linkage, at(standing.linkage, standing.drag, u))[1];
  };
  CHECK(std::abs(lower(1.0) - lower(0.95)) > 0.9 * turns.section[1]);
}

TEST_CASE("course: half_turns bounds a drag whose hinge passes under the pivot", "[mechanism]") {
  Standing standing(0.6);
  standing.drag.from.lean = -0.3;  // the hinge sinks, then rises
  standing.drag.to.lean = 0.4;
  std::mt19937 random(17);
  CHECK(worst_excess(standing.linkage, standing.drag, random) <= 0.0);
}

TEST_CASE("course: half_turns bounds straight segments, and what stays gets exactly zero", "[mechanism]") {
  const Linkage linkage{{1.0, 2.9}, 3, {1.2, 1.0, 0.8}, {-0.08, 0.09}, {-1.0, 1.0}};
  std::mt19937 random(19);
  std::uniform_real_distribution<double> angle(-3.0, 3.0);
  for (int n = 0; n < 5; ++n) {
    Segment segment;
    segment.from = {angle(random), angle(random), {angle(random), angle(random)}};
    segment.to = {angle(random), angle(random), {angle(random), angle(random)}};
    CHECK(worst_excess(linkage, segment, random) <= 0.0);
  }
  Segment fold;
  fold.from = fold.to = {4.0, 1.1, {0.3, 0.0}};
  fold.to.folds[0] = 2.0;
  const Turns turns = half_turns(linkage, fold, 0.25, 0.75);
  CHECK(turns.station == 0.0);
  CHECK(turns.section[0] == 0.0);
  CHECK(turns.joint[2] == 0.0);
  CHECK(turns.section[1] == Approx(0.25 * 1.7));  // Catch's default, rounding aside
}

TEST_CASE("course: a hang turns the lower section by nothing but rounding", "[mechanism]") {
  const Linkage linkage{{1.0, 2.9}, 2, {1.79, 1.44, 0.0}, {-0.082, 0.0}, {-1.0, 0.0}};
  Segment hang;
  hang.from = {0.0, 0.8, {0.85, 0.0}};
  hang.to = {0.0, 1.2, {1.25, 0.0}};
  CHECK(half_turns(linkage, hang, 0.0, 1.0).section[1] < 1e-14);
}
