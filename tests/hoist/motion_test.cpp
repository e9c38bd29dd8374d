#include "sim/hoist/motion.h"

#include <catch2/catch.hpp>

#include <cmath>

#include "sim/mechanism/model.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

TEST_CASE("motion: rates along drag, swing, hang, fold and lift are those of small steps", "[hoist]") {
  const Model model = build_model(testing::sample_scene());
  int drags = 0, straights = 0;
  for (const Move& move : model.moves)
    for (const Segment& segment : move.segments)
      for (const double u : {0.1, 0.35, 0.6, 0.9}) {
        const double h = 1e-6;  // central difference: rounding 1e-10 and h^2, which grow towards full stretch
        const auto before = section_leans(model.linkage, at(model.linkage, segment, u - h));
        const auto after = section_leans(model.linkage, at(model.linkage, segment, u + h));
        const LeanRates rates = lean_rates(model.linkage, segment, u);
        for (std::size_t j = 0; j < 2; ++j)
          CHECK(rates[j] == Approx((after[j] - before[j]) / (2.0 * h)).epsilon(1e-6).margin(1e-8));
        ++(segment.kind == SegmentKind::drag ? drags : straights);
      }
  CHECK(drags > 0);
  CHECK(straights > 0);
}

TEST_CASE("motion: a dragged axle keeps its height", "[hoist]") {
  const Model model = build_model(testing::sample_scene());
  for (const Move& move : model.moves)
    for (const Segment& segment : move.segments) {
      if (segment.kind != SegmentKind::drag) continue;
      for (const double u : {0.0, 0.3, 0.7, 0.99}) {
        const auto X_W = place_sections(model.linkage, at(model.linkage, segment, u));
        const LeanRates rates = lean_rates(model.linkage, segment, u);
        const Vec2 axle = point_velocity(model.linkage, X_W, rates, 1, segment.drag.axle);
        CHECK(axle.y == Approx(0.0).margin(1e-12 * (1.0 + std::abs(rates[1]))));  // rounding
      }
    }
}
