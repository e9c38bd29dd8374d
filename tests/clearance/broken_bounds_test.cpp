#include <catch2/catch.hpp>

#include <cmath>
#include <random>

#include "sim/geometry/arc.h"
#include "tests/support/proof_maker.h"
#include "tests/support/random_outlines.h"

using namespace stowpath;
using namespace stowpath::testing;

// Bounds that are no part of the halving, each with what would show it too small.

TEST_CASE("bounds: play covers a pivot that wanders by it, and nine tenths of it would not", "[clearance]") {
  std::mt19937 random(41);
  const double margin = 0.003;
  int proven = 0, exceeded = 0;
  for (int n = 0; n < 150; ++n) {
    ProofMaker maker = ProofMaker::swing(0.0, 1.2);
    maker.part(make_capsule({0.0, 0.0}, {2.0, 0.0}, 0.03));
    maker.post(make_disc(on_arc(uniform(random, 2.04, 2.08), uniform(random, 0.2, 1.0)), 0.005));
    const double play = uniform(random, 0.0, 0.02);
    if (verdict(maker.margin(margin, play).proof()) != Verdict::clear) continue;
    ++proven;
    double least = 1.0, least_at_nine_tenths = 1.0;
    for (int k = 0; k < 40; ++k) {
      const double angle = 0.157 * k;
      const Vec2 out{std::cos(angle), std::sin(angle)};
      maker.linkage.pivot = play * out;
      least = std::min(least, maker.least(1e-4).at_most);
      maker.linkage.pivot = play / 0.9 * out;  // as if this were the wander, and `play` nine tenths of it
      least_at_nine_tenths = std::min(least_at_nine_tenths, maker.least(1e-4).at_most);
    }
    CHECK(least >= margin - 1e-9);  // the guard for rounding
    exceeded += least_at_nine_tenths < margin;
  }
  CHECK(proven > 40);  // of 150
  CHECK(exceeded > 0);
}

TEST_CASE("bounds: wires on a bent rod's true arc are met, pieces inside the arc would miss some", "[clearance]") {
  const ArcBand band{{0.0, 0.0}, 0.02, 0.032, 0.3, 3.5};
  const double tolerance = 5e-5, r = 5e-4;
  const std::vector<RoundedPolygon> cover = cover_arc(band, tolerance);
  const double half = 0.5 * band.sweep / static_cast<double>(cover.size());
  std::mt19937 random(43);
  int met = 0, met_inside = 0, met_beyond = 0;
  for (int n = 0; n < 1000; ++n) {
    const double angle = band.from + uniform(random, 0.0, band.sweep);
    const auto meets = [&](double beyond, double shrink) {
      const Vec2 at = (band.outer + r + beyond) * Vec2{std::cos(angle), std::sin(angle)};
      double least = 1.0;
      for (RoundedPolygon piece : cover) {
        for (Vec2& v : piece.core) v = shrink * v;
        least = std::min(least, distance(piece, {}, make_disc(at, r), {}));
      }
      return least < 0.0;
    };
    met += meets(-1e-9, 1.0);
    met_inside += meets(-1e-9, std::cos(half));  // corners on the circle instead of outside it
    met_beyond += meets(tolerance, 1.0);
  }
  CHECK(met == 1000);
  CHECK(met_inside < 1000);
  CHECK(met_beyond == 0);
}
