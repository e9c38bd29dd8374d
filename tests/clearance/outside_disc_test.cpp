// An outline cut at a disc, held against points of the outline drawn at random.
#include "sim/clearance/outside_disc.h"

#include <catch2/catch.hpp>

#include "sim/geometry/distance.h"
#include "tests/support/random_outlines.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

constexpr double kRounding = 1e-8;  // slivers are covered by boxes so much wider [m]

bool holds(const RoundedPolygon& outline, Vec2 point) {
  return signed_distance(Outline(outline), Outline(make_disc(point, 0.0))) <= kRounding;
}

Vec2 about_outline(std::mt19937& random, const RoundedPolygon& outline) {
  Vec2 lo = outline.core.front(), hi = lo;
  for (const Vec2 v : outline.core) {
    lo = {std::min(lo.x, v.x), std::min(lo.y, v.y)};
    hi = {std::max(hi.x, v.x), std::max(hi.y, v.y)};
  }
  const double r = outline.radius;
  return {uniform(random, lo.x - r, hi.x + r), uniform(random, lo.y - r, hi.y + r)};
}

/// Points of random outlines that lie beyond their discs, and how many no piece holds when it is cut at `grown` times
/// the radius.
struct Tally {
  int beyond = 0, lost = 0, added = 0;
};

void look(std::mt19937& random, double grown, Tally& tally) {
  const RoundedPolygon outline = random_outline(random);
  const Vec2 centre = about_outline(random, outline);
  const double radius = uniform(random, 0.01, 0.5);
  const std::vector<RoundedPolygon> pieces = outside_disc(outline, centre, grown * radius);
  const auto in_a_piece = [&](Vec2 p) {
    return std::any_of(pieces.begin(), pieces.end(), [p](const RoundedPolygon& piece) { return holds(piece, p); });
  };
  for (int i = 0; i < 40; ++i) {
    const Vec2 p = about_outline(random, outline);
    if (in_a_piece(p) && !holds(outline, p)) ++tally.added;
    if (!holds(outline, p) || norm(p - centre) <= radius) continue;
    ++tally.beyond;
    if (!in_a_piece(p)) ++tally.lost;
  }
}

Tally tally(double grown) {
  std::mt19937 random(411);
  Tally out;
  for (int i = 0; i < 2000; ++i) look(random, grown, out);
  return out;
}

}  // namespace

TEST_CASE("outside a disc: all of an outline beyond it is in some piece, and no piece adds anything", "[clearance]") {
  const Tally found = tally(1.0);
  CHECK(found.beyond > 1000);
  CHECK(found.lost == 0);
  CHECK(found.added == 0);
}

TEST_CASE("outside a disc: a square that reaches past the disc loses points", "[clearance]") {
  CHECK(tally(1.6).lost > 0);
}

TEST_CASE("outside a disc: nothing is left of an outline that its square holds", "[clearance]") {
  CHECK(outside_disc(make_disc({0.3, 0.1}, 0.02), {0.3, 0.1}, 0.05).empty());
}
