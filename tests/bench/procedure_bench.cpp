#include <cmath>
#include <map>
#include <memory>
#include <vector>

#include "tests/bench/reference_scene.h"
#include "tests/bench/side_by_side.h"
#include "tests/reference/fcl_prism.h"

namespace stowpath::bench {
namespace {

constexpr double kStep = 0.0015;  // nothing moves farther between two samples [m]

const ReferenceScene& scene(int obstacles) {
  static std::map<int, std::unique_ptr<ReferenceScene>> made;
  std::unique_ptr<ReferenceScene>& out = made[obstacles];
  if (!out) out = std::make_unique<ReferenceScene>(obstacles);
  return *out;
}

/// FCL's box with what pruning needs.
struct FclBox {
  fcl::Boxd shape;
  fcl::Transform3d X_FB;  // in its section, or the room
  int section = 0;
  fcl::Transform3d X_WB;
  fcl::AABBd bounds;

  void place(const fcl::Transform3d& X_WF) {
    X_WB = X_WF * X_FB;
    const fcl::Vector3d half = X_WB.linear().cwiseAbs() * (0.5 * shape.side);
    bounds = fcl::AABBd(X_WB.translation() - half, X_WB.translation() + half);
  }
};

std::vector<FclBox> fcl_boxes(const std::vector<BoxPart>& parts) {
  std::vector<FclBox> out;
  for (const BoxPart& p : parts) {
    for (const Interval i : p.stations) {
      const testing::Prism prism{p.outline, p.X_FB, i};
      out.push_back({testing::fcl_box(prism), testing::fcl_box_pose(prism), p.section, {}, {}});
      out.back().place(fcl::Transform3d::Identity());
    }
  }
  return out;
}

/// What a careful user of FCL would write: sample so finely that nothing moves over kStep, leave out what the bounding
/// boxes keep apart by the margin, and ask FCL for the rest. It proves nothing between the samples.
struct SampledProcedure {
  const ReferenceScene& scene;
  std::vector<FclBox> moving = fcl_boxes(scene.moving), fixed = fcl_boxes(scene.fixed);
  long long samples = 0, distances = 0;

  bool clear_at(const Configuration& now) {
    ++samples;
    const SectionPoses X_W = place_sections(scene.linkage, now);
    bool clear = true;
    for (FclBox& m : moving) {
      fcl::Transform3d X = testing::fcl_pose(X_W[static_cast<std::size_t>(m.section)]);
      X.translation().z() = now.station;
      m.place(X);
      const fcl::Vector3d margin = fcl::Vector3d::Constant(ReferenceScene::kMargin);
      const fcl::AABBd grown(m.bounds.min_ - margin, m.bounds.max_ + margin);
      for (const FclBox& f : fixed) {
        if (!grown.overlap(f.bounds)) continue;
        ++distances;
        const double d = testing::fcl_distance(m.shape, m.X_WB, f.shape, f.X_WB, fcl::GST_LIBCCD, 1e-6);
        clear = clear && d >= ReferenceScene::kMargin;
      }
    }
    return clear;
  }

  bool clear_along(const Segment& segment) {
    const int steps = static_cast<int>(std::ceil(greatest_travel(scene, segment) / kStep));
    bool clear = true;
    for (int k = 0; k <= steps; ++k) {
      const double u = static_cast<double>(k) / steps;
      Configuration now = at(scene.linkage, segment, u);
      if (segment.over_stations()) now.station = segment.stations.lo + u * segment.stations.length();
      clear = clear_at(now) && clear;
    }
    return clear;
  }

  bool clear() {
    samples = distances = 0;
    bool all = true;
    for (const Segment& s : scene.procedure) all = clear_along(s) && all;
    return all;
  }
};

/// The whole procedure proven clear by the margin, beside FCL's boxes sampled at 1.5 mm.
void procedure(benchmark::State& state) {
  const ReferenceScene& all = scene(static_cast<int>(state.range(0)));
  SampledProcedure sampled{all};
  WalkCounts counts;
  bool proven = true, found_clear = true;
  side_by_side(
      state, 1.0,
      [&] {
        counts = {};
        proven = all.prove_procedure(counts) && proven;
      },
      [&] { found_clear = sampled.clear() && found_clear; });
  if (!proven || !found_clear) state.SkipWithError("the procedure is clear, and one of the two did not find it so");
  state.counters["exact"] = static_cast<double>(counts.distances);
  state.counters["rejected"] = static_cast<double>(counts.rejects);
  state.counters["samples"] = static_cast<double>(sampled.samples);
  state.counters["fcl_distances"] = static_cast<double>(sampled.distances);
}
BENCHMARK(procedure)->ArgName("obstacles")->Arg(73)->Arg(40)->Arg(400)->UseManualTime()->Iterations(3);
BENCHMARK(procedure)->ArgName("obstacles")->Arg(4000)->UseManualTime()->Iterations(1);

}  // namespace
}  // namespace stowpath::bench
