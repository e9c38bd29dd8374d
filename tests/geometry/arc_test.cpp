#include "sim/geometry/arc.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "sim/geometry/distance.h"
#include "tests/support/random_outlines.h"

namespace stowpath {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;

Vec2 polar(Vec2 centre, double radius, double angle) {
  return centre + radius * Vec2{std::cos(angle), std::sin(angle)};
}

ArcBand random_band(std::mt19937& random) {
  const auto number = [&](double lo, double hi) { return testing::uniform(random, lo, hi); };
  ArcBand band{{number(-1, 1), number(-1, 1)}, number(0.005, 0.05), 0.0, number(-4, 4), number(0.1, kTurn)};
  band.outer = band.inner + number(0.001, 0.02);
  return band;
}

double distance_to_cover(const std::vector<Outline>& cover, Vec2 p) {
  double least = 1.0;
  const Outline point(make_disc(p, 0.0));
  for (const Outline& piece : cover) least = std::min(least, signed_distance(piece, point));
  return least;
}

/// How far p lies outside the band, where its angle is within the sweep.
double stands_out(const ArcBand& band, Vec2 p) {
  const double r = norm(p - band.centre);
  return std::max(r - band.outer, band.inner - r);
}

}  // namespace

TEST_CASE("arc: the cover holds every point of the band", "[geometry]") {
  std::mt19937 random(1);
  double worst = -1.0;
  for (int i = 0; i < 100; ++i) {
    const ArcBand band = random_band(random);
    std::vector<Outline> cover;
    for (const RoundedPolygon& piece : cover_arc(band, 5e-5)) cover.emplace_back(piece);
    for (int k = 0; k < 1000; ++k) {
      const double r = k % 3 == 0 ? band.outer : testing::uniform(random, band.inner, band.outer);
      const double angle = band.from + band.sweep * testing::uniform(random, 0, 1);
      worst = std::max(worst, distance_to_cover(cover, polar(band.centre, r, angle)));
    }
  }
  CHECK(worst <= 1e-15);  // its edges touch the outer circle, and its coordinates are rounded near 1 m
}

TEST_CASE("arc: the cover stands out by at most the tolerance", "[geometry]") {
  std::mt19937 random(2);
  double worst = 0.0;
  for (int i = 0; i < 1000; ++i) {
    const ArcBand band = random_band(random);
    const double tolerance = std::pow(10.0, testing::uniform(random, -6, -4));
    for (const RoundedPolygon& piece : cover_arc(band, tolerance)) {
      for (std::size_t k = 0; k < 4; ++k) {
        worst = std::max(worst, stands_out(band, piece.core[k]) / tolerance);
        const Vec2 middle = lerp(piece.core[k], piece.core[(k + 1) % 4], 0.5);
        worst = std::max(worst, stands_out(band, middle) / tolerance);
      }
    }
  }
  CHECK(worst <= 1.0);
  CHECK(worst > 0.9);  // and it makes use of it: few pieces
}

TEST_CASE("arc: the pieces reach from the first angle to the last", "[geometry]") {
  const ArcBand half{{0, 0}, 0.02, 0.03, 0.0, kTurn / 2};
  const std::vector<RoundedPolygon> cover = cover_arc(half, 5e-5);
  CHECK(cover.size() < 30);
  for (const RoundedPolygon& piece : cover)
    for (const Vec2 v : piece.core) CHECK(v.y >= -1e-16);
  CHECK(cover.front().core[0] == Vec2{0.02, 0});
  CHECK(norm(cover.back().core[3] - Vec2{-0.02, 0}) < 1e-16);
}

TEST_CASE("arc: radii, sweep and tolerance out of range are refused", "[geometry]") {
  CHECK_THROWS_WITH(cover_arc({{0, 0}, 0.0, 1, 0, 1}, 1e-4), "arc: needs 0 < inner < outer");
  CHECK_THROWS_WITH(cover_arc({{0, 0}, 2, 1, 0, 1}, 1e-4), "arc: needs 0 < inner < outer");
  const char* const sweep = "arc: the sweep must be more than 0 and at most a full turn";
  CHECK_THROWS_WITH(cover_arc({{0, 0}, 1, 2, 0, 0}, 1e-4), sweep);
  CHECK_THROWS_WITH(cover_arc({{0, 0}, 1, 2, 0, 7}, 1e-4), sweep);
  CHECK_THROWS_WITH(cover_arc({{0, 0}, 1, 2, 0, 1}, 0.0), "arc: the tolerance must be positive");
  CHECK_THROWS_WITH(cover_arc({{0, 0}, 1, 2, 0, 1}, std::nan("")), "arc: the tolerance must be positive");
}

}  // namespace stowpath
