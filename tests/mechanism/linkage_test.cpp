#include "sim/mechanism/linkage.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <random>

using namespace stowpath;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

Linkage two_links(double upper, double lower, double across, double sign) {
  Linkage linkage;
  linkage.sections = 2;
  linkage.length = {upper, lower, 0.0};
  linkage.hinge_across = {across, 0.0};
  linkage.fold_sign = {sign, 0.0};
  return linkage;
}

Vec2 tip(const Linkage& linkage, double lean, double fold) {
  const auto X_W = place_sections(linkage, {0.0, lean, {fold, 0.0}});
  return X_W[1] * Vec2{linkage.length[1], 0.0};
}

}  // namespace

// The two-link arm by the law of cosines: |tip|^2 = A^2 + B^2 + 2AB cos(fold). Computed by hand; any length unit.
TEST_CASE("linkage: the tip of two links stands where the law of cosines puts it", "[mechanism]") {
  const Linkage links = two_links(72.0, 66.0, 0.0, +1.0);
  CHECK(norm(tip(links, 0.3, 90.0 * kDegree)) == Approx(97.672924).margin(5e-7));  // six decimals are stated
  CHECK(norm(tip(links, 0.3, 180.0 * kDegree)) == Approx(6.0).margin(1e-12));      // rounding of sums of 138
  CHECK(tip(links, 29.0 * kDegree, 0.0).y == Approx(-120.697520).margin(5e-7));
}

TEST_CASE("linkage: lean 0 hangs straight down and the lean is positive away from the back wall", "[mechanism]") {
  Linkage links = two_links(2.0, 1.0, 0.0, -1.0);
  links.pivot = {1.0, 3.0};
  const Vec2 plumb = tip(links, 0.0, 0.0), level = tip(links, 90.0 * kDegree, 0.0);
  CHECK(norm(plumb - Vec2{1.0, 0.0}) < 1e-15);  // one rounding of numbers near 3
  CHECK(norm(level - Vec2{4.0, 3.0}) < 1e-15);
  CHECK((place_sections(links, {})[0] * Vec2{0.0, 0.1}).x == Approx(1.1).margin(1e-15));  // across: away from the wall
}

TEST_CASE("linkage: a back hinge lessens the lean of what it carries, a front hinge adds to it", "[mechanism]") {
  const Configuration folded{0.0, 80.0 * kDegree, {50.0 * kDegree, 0.0}};
  CHECK(section_leans(two_links(1, 1, 0, -1.0), folded)[1] == Approx(30.0 * kDegree).margin(1e-15));
  CHECK(section_leans(two_links(1, 1, 0, +1.0), folded)[1] == Approx(130.0 * kDegree).margin(1e-15));
}

TEST_CASE("linkage: folded flat, two faces lie exactly twice the hinge's offset apart", "[mechanism]") {
  for (const double sign : {-1.0, +1.0}) {
    const double face = sign * 2.5, offset = 0.5;  // the face that carries the hinge: back at -2.5, front at +2.5
    const Linkage links = two_links(72.0, 66.0, face + sign * offset, sign);
    const auto X_W = place_sections(links, {0.0, 29.0 * kDegree, {std::numbers::pi, 0.0}});
    const Vec2 on_lower =
        X_W[0].inverse() * (X_W[1] * Vec2{10.0, face});               // a point of the lower face, seen from the upper
    CHECK(std::abs(on_lower.y - face) == Approx(1.0).margin(1e-12));  // rounding at lengths near 140
    CHECK(on_lower.x == Approx(62.0).margin(1e-12));
  }
}

TEST_CASE("linkage: both sections hold their hinge at the same point, at any pose", "[mechanism]") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> angle(-3.2, 3.2);
  Linkage links{{1.0, 2.9}, 3, {1.2, 1.0, 0.8}, {-0.08, 0.09}, {-1.0, 1.0}};
  for (int n = 0; n < 1000; ++n) {
    const auto X_W = place_sections(links, {0.0, angle(random), {angle(random), angle(random)}});
    for (std::size_t k = 0; k < 2; ++k) {
      const int j = static_cast<int>(k);
      CHECK(norm(X_W[k] * links.distal(j) - X_W[k + 1] * links.proximal(j + 1)) < 4e-15);  // a few roundings near 4
    }
  }
}

TEST_CASE("linkage: a hinge swings about the pivot on the circle that hinge_swing names", "[mechanism]") {
  const Linkage links{{1.0, 2.9}, 3, {1.2, 1.0, 0.8}, {-0.08, 0.09}, {-1.0, 1.0}};
  const Configuration folded{0.0, 0.7, {0.4, 0.9}};
  for (int hinge = 0; hinge < 2; ++hinge) {
    const HingeSwing swing = hinge_swing(links, folded, hinge);
    const Vec2 there = place_sections(links, folded)[static_cast<std::size_t>(hinge)] * links.distal(hinge);
    const double turn = folded.lean + swing.phase;
    CHECK(norm(there - links.pivot - swing.reach * Vec2{std::sin(turn), -std::cos(turn)}) < 4e-15);
  }
}
