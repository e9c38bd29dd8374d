#include "sim/clearance/wander.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>

#include "sim/clearance/proof.h"
#include "sim/mechanism/pivot_play.h"
#include "tests/support/gallery.h"
#include "tests/support/proof_maker.h"
#include "tests/support/random_rig.h"

using namespace stowpath;
using testing::kDegree;

namespace {

Vec2 off(double slack, double touch) { return slack * Vec2{std::sin(touch), 1.0 - std::cos(touch)}; }

// A disc that swings past a disc, with hooks that wander.
struct Draw {
  double margin = 0.003, lean0 = 0.0, lean1 = 0.0;
  Wander wander;
  Vec2 on_section, post;
  double radius = 0.0, post_radius = 0.0;
};

Draw draw_case(std::mt19937& random) {
  using testing::draw;
  Draw d;
  d.wander = {draw(random, 0.002, 0.010), {draw(random, -2.0, 0.0), draw(random, 0.0, 2.0)}, 0.0, 0.0, 0.0};
  d.lean0 = draw(random, 0.0, 1.0);
  d.lean1 = d.lean0 + draw(random, 0.0, 0.4);
  d.on_section = {draw(random, 0.0, 0.3), draw(random, -0.1, 0.1)};
  d.radius = draw(random, 0.005, 0.02);
  d.post_radius = draw(random, 0.005, 0.02);
  const double way = draw(random, 0.0, 6.28), lean = draw(random, d.lean0, d.lean1);
  const Pose2 X_W = place_sections({{0.0, 0.0}, 1, {1.0}, {}, {}}, {0.0, lean, {}})[0];
  const double gap = d.margin + d.wander.slack * draw(random, 0.0, 2.0);
  d.post = X_W * d.on_section + (d.radius + d.post_radius + gap) * Vec2{std::cos(way), std::sin(way)};
  return d;
}

Verdict proven(const Draw& d, double share) {
  const Linkage linkage{{0.0, 0.0}, 1, {1.0}, {}, {}};
  Segment segment;
  segment.from.lean = d.lean0;
  segment.to.lean = d.lean1;
  std::vector<Mover> movers(1);
  movers[0].outline = Outline(make_disc(d.on_section, d.radius));
  movers[0].stations = {{-0.1, 0.1}};
  const TargetSet targets({{Outline(make_disc(d.post, d.post_radius)), {{-1.0, 1.0}}, 0.0, 0}});
  NeedTable needs(1, 1);
  needs.wander = d.wander;
  needs.wander.touch = {share * d.wander.touch.lo, share * d.wander.touch.hi};
  const double reach = wander_reach(needs.wander);
  needs.at(0, 0) = {true, false, d.margin, reach, reach};
  return testing::verdict(prove({linkage, segment, kRoom, movers, targets, needs}));
}

// The least clearance over the motion and the wander, by looking everywhere.
double sampled(const Draw& d) {
  double least = 1e9;
  for (int i = 0; i <= 200; ++i) {
    const double lean = d.lean0 + (d.lean1 - d.lean0) * i / 200.0;
    const Vec2 centre = place_sections({{0.0, 0.0}, 1, {1.0}, {}, {}}, {0.0, lean, {}})[0] * d.on_section;
    for (int k = 0; k <= 100; ++k) {
      const double touch = d.wander.touch.lo + d.wander.touch.length() * k / 100.0;
      least = std::min(least, norm(centre + off(d.wander.slack, touch) - d.post) - d.radius - d.post_radius);
    }
  }
  return least;
}

}  // namespace

TEST_CASE("wander: how far the hooks go along a direction is the best of all places on their arc", "[clearance]") {
  std::mt19937 random(811);
  for (int n = 0; n < 2000; ++n) {
    const Wander wander{testing::draw(random, 0.0, 0.01),
                        {testing::draw(random, -3.14, 0.0), testing::draw(random, 0.0, 3.14)},
                        0.0,
                        0.0,
                        0.0};
    const double angle = testing::draw(random, 0.0, 6.2831853);
    const Vec2 way{std::cos(angle), std::sin(angle)};
    double best = 0.0, far = 0.0;
    for (int k = 0; k <= 4000; ++k) {
      const Vec2 p = off(wander.slack, wander.touch.lo + wander.touch.length() * k / 4000.0);
      best = std::max(best, dot(p, way));
      far = std::max(far, norm(p));
    }
    const double grid = wander.slack * 2e-6;  // half a step squared
    CHECK(wander_towards(wander, way) >= best - 1e-15);
    CHECK(wander_towards(wander, way) <= best + grid);
    CHECK(wander_reach(wander) >= far - 1e-15);
    CHECK(wander_reach(wander) <= far + grid);
    CHECK(wander_towards(wander, way) <= wander_reach(wander) + 1e-15);
  }
}

TEST_CASE("wander: a pair proven clear keeps its margin wherever the hooks wander, and half a wander does not do",
          "[clearance]") {
  std::mt19937 random(404);
  int clear = 0, cases = 0, told_wrong = 0, by_direction = 0;
  for (int n = 0; n < 600; ++n) {
    const Draw d = draw_case(random);
    const double least = sampled(d);
    ++cases;
    if (proven(d, 1.0) == Verdict::clear) {
      ++clear;
      CHECK(least >= d.margin - 1e-12);
      // No isotropic play would have let this through.
      Draw still = d;
      still.wander.touch = {0.0, 0.0};
      if (sampled(still) < d.margin + wander_reach(d.wander)) ++by_direction;
    }
    if (proven(d, 0.5) == Verdict::clear && least < d.margin) ++told_wrong;
  }
  CHECK(clear > cases / 5);
  CHECK(clear < cases * 4 / 5);
  CHECK(by_direction > 50);
  CHECK(told_wrong > 20);  // a wander of half the range is seen to be too small
}

TEST_CASE("wander: what a move's statics say joins the scene's seat range", "[clearance]") {
  Model model = testing::model_of(testing::gallery_text("demo-cured"));
  Move move = model.moves[0];
  CHECK(wander_in(model, move).touch == assumed_wander(model).touch);
  CHECK(wander_in(model, move).rise == wander_rise(model.hook_slack, assumed_wander(model).touch));
  CHECK(wander_reach(assumed_wander(model)) == Approx(model.hook_play).margin(1e-15));
  move.seat = MoveSeat{{-10 * kDegree, 50 * kDegree}, 0.001, 0.002, 0.0};
  CHECK(wander_in(model, move).touch == Interval{-model.seat_range, 50 * kDegree});
  CHECK(wander_in(model, move).growth == 0.002);
}
