#include "sim/rehearsal/world_outline.h"

#include <algorithm>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "sim/geometry/distance.h"
#include "tests/support/random_outlines.h"
#include "tests/support/random_rig.h"

namespace stowpath {
namespace {

double distance_to(const RoundedPolygon& outline, Vec2 p) {
  return signed_distance(Outline(outline), Outline(make_disc(p, 0.0)));
}

bool convex(const RoundedPolygon& piece) {
  for (std::size_t i = 0; i < piece.core.size(); ++i) {
    const Vec2 a = piece.core[i], b = piece.core[(i + 1) % piece.core.size()],
               c = piece.core[(i + 2) % piece.core.size()];
    if (cross(b - a, c - b) <= 0.0 || norm(b - a) < kLeastEdge) return false;
  }
  return true;
}

RoundedPolygon regular(int corners, double size, double radius) {
  std::vector<Vec2> core;
  for (int i = 0; i < corners; ++i) {
    const double angle = 6.283185307179586 * i / corners;
    core.push_back({size * std::cos(angle), size * std::sin(angle)});
  }
  return make_rounded_polygon(std::move(core), radius);
}

TEST_CASE("world outline: discs and polygons of eight corners that make up the outline", "[rehearsal]") {
  std::mt19937 random(5);
  for (const RoundedPolygon& outline :
       {regular(3, 0.2, 0.0), regular(8, 0.2, 0.0), regular(9, 0.2, 0.0), regular(31, 0.3, 0.0), regular(4, 0.1, 0.02),
        make_capsule({0.0, 0.0}, {0.3, 0.1}, 0.02), make_disc({0.1, 0.1}, 0.05)}) {
    const std::vector<RoundedPolygon> pieces = world_outline(outline);
    for (const RoundedPolygon& piece : pieces) {
      CHECK((piece.core.size() == 1 || (piece.core.size() <= 8 && piece.radius == 0.0 && convex(piece))));
    }
    int inside = 0;
    for (int i = 0; i < 2000; ++i) {
      const Vec2 p{testing::draw(random, -0.4, 0.4), testing::draw(random, -0.4, 0.4)};
      const double true_distance = distance_to(outline, p);
      if (std::abs(true_distance) < 1e-6) continue;
      const bool held = std::any_of(pieces.begin(), pieces.end(),
                                    [&](const RoundedPolygon& piece) { return distance_to(piece, p) <= 1e-9; });
      CHECK(held == (true_distance < 0.0));
      if (held) ++inside;
    }
    CHECK(inside > 5);
  }
}

TEST_CASE("world outline: corners too near for the engine become one, and what is too thin is made half a millimetre",
          "[rehearsal]") {
  const auto sliver = world_outline(make_rounded_polygon({{0.0, 0.0}, {1.0, 0.0}, {1.0, 2e-4}}, 0.0));
  const auto wire = world_outline(make_capsule({0.0, 0.0}, {0.3, 0.0}, 0.0));
  for (const auto& thin : {sliver, wire}) {
    REQUIRE_FALSE(thin.empty());
    const auto inside = [&](Vec2 at) {
      return std::any_of(thin.begin(), thin.end(),
                         [&](const RoundedPolygon& piece) { return distance_to(piece, at) < 0.0; });
    };
    for (const RoundedPolygon& piece : thin) CHECK((piece.core.size() == 1 || convex(piece)));
    CHECK(inside({0.2, 2e-5}));
    CHECK_FALSE(inside({0.2, kLeastEdge + 2.5e-4}));  // no farther out than what is taken as one and made thicker
    CHECK_FALSE(inside({0.2, -2.6e-4}));
  }
  for (int i = 0; i < 360; ++i) {  // rounding must not take the bar away, whichever way it points
    const double angle = 0.01745 * i;
    const Vec2 end{0.3 * std::cos(angle), 0.3 * std::sin(angle)};
    const auto turned = world_outline(make_capsule({0.0, 0.0}, end, 0.0));
    CHECK(std::any_of(turned.begin(), turned.end(),
                      [&](const RoundedPolygon& piece) { return distance_to(piece, 0.5 * end) < 0.0; }));
  }
  const auto blunt = world_outline(make_rounded_polygon({{0.0, 0.0}, {0.1, 0.0}, {0.1, 1e-4}, {0.0, 0.1}}, 0.0));
  CHECK(blunt.front().core.size() == 3);
}

}  // namespace
}  // namespace stowpath
