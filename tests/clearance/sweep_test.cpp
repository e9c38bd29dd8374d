#include "sim/clearance/sweep.h"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>

using namespace stowpath;

namespace {

constexpr double kQuarter = 0.5 * std::numbers::pi;

/// A rod slid round the corner of two corridors with its ends on the outer walls, x = 0 and y = 0: at angle a its ends
/// are (l cos a, 0) and (0, l sin a). Its middle travels at l / 2 per radian.
Motion slide_round_corner(double l) {
  const auto pose = [l](double u) {
    const double a = kQuarter * u;
    return make_pose({0.5 * l * std::cos(a), 0.5 * l * std::sin(a)}, std::numbers::pi - a);
  };
  return {pose, 0.5 * l * kQuarter, kQuarter};
}

Clearance round_the_corner(double l, double a, double b) {
  const RoundedPolygon inner = make_rounded_polygon({{b, a}, {9, a}, {9, 9}, {b, 9}}, 0.0);
  const RoundedPolygon rod = make_capsule({-0.5 * l, 0.0}, {0.5 * l, 0.0}, 0.0);
  return sweep_clearance(rod, slide_round_corner(l), {&inner, 1}, 1e-4);
}

}  // namespace

// Kalman, Mathematics Magazine 80(3), 2007, 163-182: the longest rod past a corner of widths a, b is (a^2/3 +
// b^2/3)^(3/2).
TEST_CASE("sweep: a rod passes a corner up to Kalman's length and not beyond", "[clearance][published]") {
  const double a = 0.8, b = 1.0, longest = 2.540332;
  CHECK(std::abs(std::pow(std::cbrt(a * a) + std::cbrt(b * b), 1.5) - longest) < 1e-6);  // the figure is cut there
  CHECK(round_the_corner(longest - 0.002, a, b).verdict == Verdict::clear);
  CHECK(round_the_corner(longest + 0.002, a, b).verdict == Verdict::interference);
}

TEST_CASE("sweep: the least clearance is enclosed within the tolerance", "[clearance]") {
  const Clearance c = round_the_corner(2.4, 0.8, 1.0);
  CHECK(c.at_least <= c.at_most);
  CHECK(c.at_most - c.at_least <= 1e-4);
  CHECK(c.at_least > 0.0);
}

TEST_CASE("sweep: a speed limit set too low loses a thin wire, the true one finds it", "[clearance]") {
  // A 1 mm wire on the arc of a rod's end: at a quarter of the true rate the halving stops before it gets there.
  const RoundedPolygon rod = make_capsule({0.0, 0.0}, {2.0, 0.0}, 0.0);
  const auto found = [&](double turn_limit) {
    int hits = 0;
    for (int k = 1; k < 200; ++k) {
      const double angle = kQuarter * (k + 0.37) / 200.0;
      const RoundedPolygon wire = make_disc({1.999 * std::cos(angle), 1.999 * std::sin(angle)}, 0.0005);
      const Motion swing{[](double u) { return make_pose({0.0, 0.0}, kQuarter * u); }, 0.0, turn_limit};
      hits += sweep_clearance(rod, swing, {&wire, 1}, 1e-4).verdict == Verdict::clear ? 0 : 1;
    }
    return hits;
  };
  CHECK(found(kQuarter) == 199);
  CHECK(found(0.25 * kQuarter) < 199);
}

TEST_CASE("sweep: what runs out of poses is undecided", "[clearance]") {
  const RoundedPolygon rod = make_capsule({0.0, 0.0}, {2.0, 0.0}, 0.0);
  const RoundedPolygon post = make_disc({0.0, 2.1}, 0.0999);
  const Motion swing{[](double u) { return make_pose({0.0, 0.0}, kQuarter * u); }, 0.0, kQuarter};
  CHECK(sweep_clearance(rod, swing, {&post, 1}, 1e-6, 3).verdict == Verdict::undecided);
}

TEST_CASE("sweep: nothing in the way is clear, and senseless limits are refused", "[clearance]") {
  const RoundedPolygon rod = make_disc({0.0, 0.0}, 0.1);
  const Motion still{[](double) { return Pose2{}; }, 0.0, 0.0};
  CHECK(sweep_clearance(rod, still, {}, 1e-3).verdict == Verdict::clear);
  CHECK_THROWS_AS(sweep_clearance(rod, still, {}, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(sweep_clearance(rod, {still.pose, -1.0, 0.0}, {}, 1e-3), std::invalid_argument);
  CHECK_THROWS_AS(sweep_clearance(rod, {}, {}, 1e-3), std::invalid_argument);
}
