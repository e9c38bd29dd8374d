#include <cmath>
#include <random>
#include <vector>

#include <benchmark/benchmark.h>

#include "sim/clearance/proof.h"
#include "tests/reference/fcl_prism.h"
#include "tests/support/proof_maker.h"

namespace stowpath {
namespace {

using testing::ProofMaker;

constexpr int kPosts = 1000;
constexpr double kPostRadius = 0.0005;                  // [m]
constexpr double kLength = 3.0, kHalf = 0.002;          // a flat bar, 4 mm thick [m]
constexpr Interval kLeans{0.0, 90 * testing::kDegree};  // it swings so far
constexpr Interval kBarStations{-0.25, 0.25}, kPostStations{-0.2, 0.2};

RoundedPolygon bar() { return make_box({0.05, -kHalf}, {kLength, kHalf}); }

std::vector<Vec2> posts(bool on_the_path) {
  std::mt19937 random(3);
  const auto number = [&](double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); };
  const double beside = std::hypot(kLength, kHalf) + kPostRadius + 0.0005;
  std::vector<Vec2> out;
  for (int k = 0; k < kPosts; ++k) {
    const double along = on_the_path ? number(0.3, kLength - 0.01) : beside;
    out.push_back(testing::on_arc(along, number(kLeans.lo + 0.01, kLeans.hi - 0.01)));
  }
  return out;
}

Verdict ours(Vec2 post) {
  ProofMaker maker = ProofMaker::swing(kLeans.lo, kLeans.hi);
  maker.part(bar(), 0, {kBarStations}).post(make_disc(post, kPostRadius), {kPostStations});
  return testing::verdict(maker.proof());
}

/// A post found, and one beside the path not called hit, each proven: counters out of 1000.
void thin_posts(benchmark::State& state) {
  const std::vector<Vec2> on = posts(true), beside = posts(false);
  for (auto _ : state) {
    int found = 0, hit = 0, clear = 0;
    for (const Vec2 p : on) found += ours(p) == Verdict::interference ? 1 : 0;
    for (const Vec2 p : beside) {
      const Verdict v = ours(p);
      hit += v == Verdict::interference ? 1 : 0;
      clear += v == Verdict::clear ? 1 : 0;
    }
    state.counters["found"] = found;
    state.counters["beside_called_hit"] = hit;
    state.counters["beside_proven_clear"] = clear;
  }
}
BENCHMARK(thin_posts)->Unit(benchmark::kMillisecond);

/// FCL asked at every so many hundredths of a degree.
void thin_posts_fcl_sampled(benchmark::State& state) {
  const testing::Prism prism{bar(), {}, kBarStations};
  const fcl::Boxd box = testing::fcl_box(prism);
  const fcl::Cylinderd post(kPostRadius, kPostStations.length());
  const double step = 0.01 * static_cast<double>(state.range(0)) * testing::kDegree;
  const std::vector<Vec2> on = posts(true);
  for (auto _ : state) {
    int found = 0;
    for (const Vec2 p : on) {
      const fcl::Transform3d X_WP = testing::fcl_pose({p, 1.0, 0.0});
      bool hit = false;
      for (double lean = kLeans.lo; lean <= kLeans.hi && !hit; lean += step) {
        const testing::Prism placed{prism.outline, make_pose({}, lean - 90 * testing::kDegree), prism.stations};
        hit = testing::fcl_overlap(box, testing::fcl_box_pose(placed), post, X_WP, fcl::GST_LIBCCD);
      }
      found += hit ? 1 : 0;
    }
    state.counters["found"] = found;
  }
}
BENCHMARK(thin_posts_fcl_sampled)->ArgName("hundredths_deg")->Arg(100)->Arg(25)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace stowpath
