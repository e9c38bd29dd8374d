#include <cmath>
#include <random>
#include <vector>

#include <box2d/b2_distance.h>
#include <box2d/b2_polygon_shape.h>

#include "sim/geometry/distance.h"
#include "tests/bench/side_by_side.h"
#include "tests/reference/fcl_prism.h"

namespace stowpath {
namespace {

using testing::Prism;

constexpr std::size_t kCount = 64;
constexpr double kQuestions = kCount * kCount;

/// The same boxes for everyone: 64 parts 4 cm to 3 m long against 64 obstacles, turned and strewn over 3 m by 3 m, so
/// that some overlap, some are near and some are far. Ours are also kept as outlines, FCL's and Box2D's as theirs.
struct Boxes {
  std::vector<Prism> parts, obstacles;
  std::vector<Outline> placed_parts, placed_obstacles;

  Boxes() {
    std::mt19937 random(1);
    const auto number = [&](double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); };
    const auto strew = [&](std::vector<Prism>& prisms, std::vector<Outline>& outlines) {
      for (std::size_t i = 0; i < kCount; ++i) {
        const Vec2 half{number(0.02, 0.5), number(0.02, 1.5)}, p{number(-1.5, 1.5), number(-1.5, 1.5)};
        prisms.push_back({make_box(-half, half), make_pose(p, number(-3, 3)), {0.0, number(0.5, 1.0)}});
        outlines.emplace_back();
        outlines.back().place(Outline(prisms.back().outline), prisms.back().X_WB);
      }
    };
    strew(parts, placed_parts);
    strew(obstacles, placed_obstacles);
  }
};

const Boxes& boxes() {
  static const Boxes all;
  return all;
}

void ask_ours() {
  double sum = 0.0;
  for (const Outline& a : boxes().placed_parts)
    for (const Outline& b : boxes().placed_obstacles) sum += signed_distance(a, b);
  benchmark::DoNotOptimize(sum);
}

void distance_of_boxes(benchmark::State& state) {
  for (auto _ : state) ask_ours();
  state.counters["each"] =
      benchmark::Counter(kQuestions, benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(distance_of_boxes);

void place_and_distance_of_boxes(benchmark::State& state) {
  std::vector<Outline> bodies;
  for (const Prism& p : boxes().parts) bodies.emplace_back(p.outline);
  Outline placed;
  for (auto _ : state) {
    double sum = 0.0;
    for (std::size_t i = 0; i < kCount; ++i) {
      for (std::size_t k = 0; k < kCount; ++k) {
        placed.place(bodies[i], boxes().parts[k].X_WB);
        sum += signed_distance(placed, boxes().placed_obstacles[(7 * i + k) % kCount]);
      }
    }
    benchmark::DoNotOptimize(sum);
  }
  state.counters["each"] =
      benchmark::Counter(kQuestions, benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}
BENCHMARK(place_and_distance_of_boxes);

/// Everything FCL asks for is built beforehand: only its distance is timed, at its own tolerance.
template <class Shape>
void beside_fcl(benchmark::State& state, Shape (*shape)(const Prism&), fcl::Transform3d (*pose)(const Prism&),
                testing::Solver solver) {
  std::vector<Shape> a, b;
  std::vector<fcl::Transform3d> X_WA, X_WB;
  for (const Prism& p : boxes().parts) a.push_back(shape(p)), X_WA.push_back(pose(p));
  for (const Prism& p : boxes().obstacles) b.push_back(shape(p)), X_WB.push_back(pose(p));
  bench::side_by_side(state, kQuestions, ask_ours, [&] {
    double sum = 0.0;
    for (std::size_t i = 0; i < kCount; ++i)
      for (std::size_t j = 0; j < kCount; ++j) sum += testing::fcl_distance(a[i], X_WA[i], b[j], X_WB[j], solver, 1e-6);
    benchmark::DoNotOptimize(sum);
  });
}

fcl::Transform3d pose_of(const Prism& p) { return testing::fcl_pose(p.X_WB); }

void beside_fcl_convex_libccd(benchmark::State& state) {
  beside_fcl(state, testing::fcl_convex, pose_of, fcl::GST_LIBCCD);
}
void beside_fcl_convex_own(benchmark::State& state) { beside_fcl(state, testing::fcl_convex, pose_of, fcl::GST_INDEP); }
void beside_fcl_boxes_libccd(benchmark::State& state) {
  beside_fcl(state, testing::fcl_box, testing::fcl_box_pose, fcl::GST_LIBCCD);
}
void beside_fcl_boxes_own(benchmark::State& state) {
  beside_fcl(state, testing::fcl_box, testing::fcl_box_pose, fcl::GST_INDEP);
}
BENCHMARK(beside_fcl_convex_libccd)->UseManualTime();
BENCHMARK(beside_fcl_convex_own)->UseManualTime();
BENCHMARK(beside_fcl_boxes_libccd)->UseManualTime();
BENCHMARK(beside_fcl_boxes_own)->UseManualTime();

b2PolygonShape box2d_shape(const Prism& p) {
  b2PolygonShape out;
  const Vec2 half = p.outline.core[2];
  out.SetAsBox(static_cast<float>(half.x), static_cast<float>(half.y));
  return out;
}

b2Transform box2d_pose(const Prism& p) {
  const float angle = static_cast<float>(std::atan2(p.X_WB.s, p.X_WB.c));
  return {b2Vec2(static_cast<float>(p.X_WB.p.x), static_cast<float>(p.X_WB.p.y)), b2Rot(angle)};
}

/// b2Distance, in float, without the shapes' skin. Cold starts from nothing; warm from its own answer to the same pose.
void beside_box2d(benchmark::State& state, bool warm) {
  std::vector<b2PolygonShape> a, b;
  for (const Prism& p : boxes().parts) a.push_back(box2d_shape(p));
  for (const Prism& p : boxes().obstacles) b.push_back(box2d_shape(p));
  std::vector<b2DistanceInput> questions(kCount * kCount);
  std::vector<b2SimplexCache> caches(kCount * kCount);
  b2DistanceOutput answer;
  for (std::size_t q = 0; q < questions.size(); ++q) {
    questions[q].proxyA.Set(&a[q / kCount], 0);
    questions[q].proxyB.Set(&b[q % kCount], 0);
    questions[q].transformA = box2d_pose(boxes().parts[q / kCount]);
    questions[q].transformB = box2d_pose(boxes().obstacles[q % kCount]);
    questions[q].useRadii = false;
    caches[q].count = 0;
    b2Distance(&answer, &caches[q], &questions[q]);
  }
  bench::side_by_side(state, kQuestions, ask_ours, [&] {
    float sum = 0.0F;
    for (std::size_t q = 0; q < questions.size(); ++q) {
      if (!warm) caches[q].count = 0;
      b2Distance(&answer, &caches[q], &questions[q]);
      sum += answer.distance;
    }
    benchmark::DoNotOptimize(sum);
  });
}
void beside_box2d_cold(benchmark::State& state) { beside_box2d(state, false); }
void beside_box2d_warm(benchmark::State& state) { beside_box2d(state, true); }
BENCHMARK(beside_box2d_cold)->UseManualTime();
BENCHMARK(beside_box2d_warm)->UseManualTime();

}  // namespace
}  // namespace stowpath
