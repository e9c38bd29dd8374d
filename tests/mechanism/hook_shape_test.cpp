#include "sim/mechanism/hook_shape.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <utility>

#include "sim/geometry/arc.h"
#include "sim/geometry/distance.h"
#include "sim/mechanism/linkage.h"
#include "tests/support/random_outlines.h"

using namespace stowpath;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

HookShape hook(double wrap_degrees, double tip = 0.0, double point = 0.0) {
  return bent_rod(0.020, 0.012, wrap_degrees * kDegree, tip, point);
}

/// The last stretch of the true bar, in convex pieces that stand out of it by no more than `tolerance`.
std::vector<Outline> true_end(const HookShape& shape, double stretch, double tolerance) {
  std::vector<Outline> pieces;
  const ArcBand band{{}, shape.inside, shape.outer, 0.5 * std::numbers::pi + shape.arc.hi - stretch, stretch};
  for (const RoundedPolygon& piece : cover_arc(band, tolerance)) pieces.emplace_back(piece);
  if (shape.end.size() < 3) return pieces;
  std::vector<Vec2> corners = shape.end;
  if (cross(corners[1] - corners[0], corners[2] - corners[1]) < 0.0) std::reverse(corners.begin(), corners.end());
  pieces.emplace_back(make_rounded_polygon(corners, 0.0));
  return pieces;
}

double distance_at(const std::vector<Outline>& pieces, double lean, const Outline& other) {
  const Linkage linkage{{}, 1, {1.0, 0.0, 0.0}, {}, {}};
  const Pose2 X_W = place_sections(linkage, {0.0, lean, {}})[0];
  double least = 1.0;
  Outline placed_piece;
  for (const Outline& piece : pieces) {
    placed_piece.place(piece, X_W);
    least = std::min(least, signed_distance(placed_piece, other));
  }
  return least;
}

/// Steps a turn through and halves the step that first touches.
std::optional<double> slow_meeting(const std::vector<Outline>& pieces, const Outline& arm, double from) {
  constexpr double kStep = 2e-3, kFull = 2.0 * std::numbers::pi;
  double clear = from;
  while (distance_at(pieces, clear + kStep, arm) > 0.0)
    if ((clear += kStep) > from + kFull - kStep) return std::nullopt;
  double touching = clear + kStep;
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (clear + touching);
    (distance_at(pieces, middle, arm) > 0.0 ? clear : touching) = middle;
  }
  return touching;
}

/// The least lift of a grid of places for the pipe that leads it out of the hook and past the curl to the wall side.
struct SlowLift {
  static constexpr double kCell = 0.00025;
  static constexpr int kHalf = 320;  // cells each way: 80 mm
  static constexpr int kSide = 2 * kHalf + 1;
  std::vector<char> free_cells;

  static std::size_t cell(int i, int j) { return static_cast<std::size_t>((j + kHalf) * kSide + i + kHalf); }

  SlowLift(const std::vector<Outline>& pieces, double lean, double pipe) : free_cells(kSide * kSide) {
    for (int j = -kHalf; j <= kHalf; ++j)
      for (int i = -kHalf; i <= kHalf; ++i)
        free_cells[cell(i, j)] = distance_at(pieces, lean, Outline(make_disc({i * kCell, j * kCell}, pipe))) > 0.0;
  }

  bool gets_out(int start, int lowest) const {
    std::vector<char> seen(free_cells.size());
    std::vector<std::pair<int, int>> todo{{0, start}};
    while (!todo.empty()) {
      const auto [i, j] = todo.back();
      todo.pop_back();
      if (std::abs(i) > kHalf || std::abs(j) > kHalf || j < lowest || seen[cell(i, j)] || !free_cells[cell(i, j)])
        continue;
      if (i == -kHalf) return true;
      seen[cell(i, j)] = 1;
      for (const auto& [di, dj] : {std::pair{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) todo.emplace_back(i + di, j + dj);
    }
    return false;
  }

  double from(double centre) const {
    const int start = static_cast<int>(std::lround(centre / kCell));
    int lowest = start;
    while (lowest > -kHalf && !gets_out(start, lowest)) lowest -= 1;
    return (start - lowest) * kCell;
  }
};

}  // namespace

TEST_CASE("hook shape: a place on the bend stands at its angle and the lean together, as the linkage turns it",
          "[mechanism]") {
  const Linkage linkage{{0.975, 2.9}, 1, {3.0, 0.0, 0.0}, {}, {}};
  for (const double lean : {0.0, 30.0, 88.0, 140.0}) {
    const Pose2 X_W = place_sections(linkage, {0.0, lean * kDegree, {}})[0];
    for (const double angle : {0.0, 90.0, 200.0}) {
      const Vec2 p_S = on_bend(0.026, angle * kDegree), seen = seen_in_room(p_S, lean * kDegree);
      CHECK(norm(X_W * p_S - linkage.pivot - seen) < 1e-15);
      const double stands = (angle + lean) * kDegree;
      CHECK(norm(seen - 0.026 * Vec2{std::cos(stands), std::sin(stands)}) < 1e-16);
    }
  }
}

TEST_CASE("hook shape: the covered arc turns with the lean, and a tip adds nothing to it", "[mechanism]") {
  const Interval covered = covered_arc(hook(200, 0.025, 0.012), 30 * kDegree);
  CHECK(covered.lo == Approx(30 * kDegree));
  CHECK(covered.hi == Approx(230 * kDegree));
}

TEST_CASE("hook shape: the end's corners are those of a bar cut square, and a point lies on its axis", "[mechanism]") {
  const HookShape square = hook(180, 0.025), pointed = hook(180, 0.025, 0.012), bare = hook(180);
  REQUIRE(bare.end.size() == 2);
  CHECK(norm(bare.end[0] - Vec2{0.0, -0.020}) < 1e-16);
  CHECK(norm(bare.end[1] - Vec2{0.0, -0.032}) < 1e-16);
  REQUIRE(square.end.size() == 4);
  CHECK(norm(square.end[1] - Vec2{0.025, -0.020}) < 1e-16);
  CHECK(norm(square.end[2] - Vec2{0.025, -0.032}) < 1e-16);
  REQUIRE(pointed.end.size() == 5);
  CHECK(norm(pointed.end[2] - Vec2{0.037, -0.026}) < 1e-16);
}

TEST_CASE("hook shape: a tip hangs lowest when it points straight down, its radius below the centre", "[mechanism]") {
  // Half a turn and 25 mm of tip: the outer corner lies hypot(32, 25) from the centre, atan(25 / 32) past 180 degrees.
  const HookShape shape = hook(180, 0.025);
  const double far = std::hypot(0.032, 0.025), past = std::atan2(0.025, 0.032);
  CHECK(lowest_of_curl(shape, 90 * kDegree - past) == Approx(-far).epsilon(1e-14));
  const std::vector<Vec2> level = end_in_room(shape, 90 * kDegree);
  CHECK(norm(level[1] - Vec2{0.025, -0.020}) < 1e-16);  // the stair level, the tip points out, under the pipe
  // Without a tip the bend itself is lowest once the curl has turned past the bottom.
  CHECK(lowest_of_curl(hook(200), 60 * kDegree) == Approx(0.032 * std::sin(260 * kDegree)).epsilon(1e-14));
  CHECK(lowest_of_curl(hook(200), 80 * kDegree) == Approx(-0.032).epsilon(1e-14));
}

TEST_CASE("hook shape: the end meets a rod beside its path where the triangle of the centres says", "[mechanism]") {
  // A rod of 12 mm straight below the centre, 36 mm away: the outer corner, 32 mm out, is 6 mm from its centre line
  // when the angle between them has the cosine (32^2 + 36^2 - 6^2) / (2 32 36).
  const ArmLine below{{0.0, -0.036}, {0.0, -0.036}, 0.006};
  const auto met = first_meeting(hook(180), below, 0.0);
  REQUIRE(met);
  CHECK(*met == Approx(90 * kDegree - std::acos(2284.0 / 2304.0)).margin(1e-13));
  CHECK_FALSE(first_meeting(hook(180), {{0.0, -0.0385}, {0.0, -0.0385}, 0.006}, 0.0));  // passes half a millimetre off
}

TEST_CASE("hook shape: a tip comes down on a level arm when its corner reaches the arm's top", "[mechanism]") {
  // 40 mm down to the centre line, 6 mm to its top: the corner, hypot(32, 25) out, has come down 34 mm.
  const ArmLine arm{{0.0, -0.040}, {-0.075, -0.040}, 0.006};
  const auto met = first_meeting(hook(180, 0.025), arm, 0.0);
  REQUIRE(met);
  const double stands = std::numbers::pi + std::asin(0.034 / std::hypot(0.032, 0.025));
  CHECK(*met == Approx(stands - std::numbers::pi - std::atan2(0.025, 0.032)).margin(1e-13));
}

TEST_CASE("hook shape: a thin wire is met by the flat of the end, where the end stands at the wire", "[mechanism]") {
  // 26 mm below the centre, between the inner and the outer corner: the end, a line through the centre, arrives when
  // it stands straight down.
  const auto met = first_meeting(hook(200), {{0.0, -0.026}, {0.0, -0.026}, 1e-9}, 0.0);
  REQUIRE(met);
  CHECK(*met == Approx(70 * kDegree).margin(1e-6));
}

TEST_CASE("hook shape: the first meeting agrees with a search by halving on the distance of the true end",
          "[mechanism]") {
  std::mt19937 random(41);
  const auto number = [&](double lo, double hi) { return testing::uniform(random, lo, hi); };
  int met = 0, missed = 0;
  for (int n = 0; n < 150; ++n) {
    const HookShape shape = bent_rod(0.020, 0.012, number(60, 240) * kDegree, n % 3 == 0 ? 0.0 : number(0.001, 0.03),
                                     n % 2 == 0 ? 0.0 : 0.012);
    const Vec2 a = number(0.034, 0.075) * seen_in_room({0.0, 1.0}, number(-3, 3));
    const Vec2 b = n % 4 == 0 ? a : a + Vec2{number(-0.1, 0.0), number(-0.02, 0.02)};
    const ArmLine arm{a, b, number(0.002, 0.008)};
    const Outline solid(a == b ? make_disc(a, arm.radius) : make_capsule(a, b, arm.radius));
    const std::vector<Outline> pieces = true_end(shape, 0.02, 1e-10);
    const double from = number(-3, 3);
    if (distance_at(pieces, from, solid) <= 0.0) continue;
    const auto slow = slow_meeting(pieces, solid, from), closed = first_meeting(shape, arm, from);
    INFO("draw " << n);
    REQUIRE(closed.has_value() == slow.has_value());
    (slow ? met : missed) += 1;
    if (slow) CHECK(std::abs(*closed - *slow) < 1e-6);
  }
  CHECK(met > 40);
  CHECK(missed > 15);
}

TEST_CASE("hook shape: half a turn comes off a plumb stair when it has risen by the inside radius", "[mechanism]") {
  CHECK(lift_to_unhook(hook(180), 0.0, 0.0167, -0.0033) == Approx(0.020).epsilon(1e-14));
  CHECK(lift_to_unhook(hook(180, 0.025), 0.0, 0.0167, -0.0033) == Approx(0.045).epsilon(1e-14));
  // Less than half a turn: the inner corner is lowest; more: the outer one.
  CHECK(lift_to_unhook(hook(120), 0.0, 0.0167, -0.0033) == Approx(0.020 * (1.0 - std::sin(120 * kDegree))));
  CHECK(lift_to_unhook(hook(200), 30 * kDegree, 0.0167, -0.0033) == Approx(0.020 + 0.032 * std::sin(50 * kDegree)));
  CHECK(lift_to_unhook(hook(60), 20 * kDegree, 0.0167, -0.0033) == 0.0);  // it ends before the pipe's top
}

TEST_CASE("hook shape: the lift to unhook agrees with leading the pipe out through a grid of places", "[mechanism]") {
  constexpr double kPipe = 0.0167, kSlack = 0.0033, kThinner = 0.0005;  // so that the grid has a way past the mouth
  struct Case {
    double wrap, tip, point, lean;
  };
  for (const Case& c : {Case{150, 0.0, 0.0, 10}, Case{180, 0.01, 0.012, 30}, Case{200, 0.0, 0.0, 30}}) {
    const HookShape shape = hook(c.wrap, c.tip, c.point);
    std::vector<Outline> pieces = true_end(shape, shape.arc.hi, 1e-4);
    pieces.emplace_back(make_box({0.0, shape.inside}, {0.3, shape.outer}));
    const SlowLift slow(pieces, c.lean * kDegree, kPipe - kThinner);
    const double closed = lift_to_unhook(shape, c.lean * kDegree, kPipe - kThinner, -kSlack);
    CHECK(std::abs(slow.from(kSlack) - closed) <
          3 * SlowLift::kCell);  // a cell at either end, and the start's rounding
  }
}

TEST_CASE("hook shape: the scene's rod and plate give the same bend where they are as deep", "[mechanism]") {
  Hooks rod;
  rod.rod = 0.012;
  rod.inside = 0.020;
  rod.wrap = 200 * kDegree;
  Hooks plate = rod;
  plate.form = HookForm::plate;
  plate.rod = 0.0;
  plate.rim = 0.012;
  const HookShape a = hook_shape(rod), b = hook_shape(plate);
  CHECK(a.outer == b.outer);
  CHECK(a.arc == b.arc);
  CHECK(a.end == b.end);
  rod.end = HookEnd::pointed;
  CHECK(hook_shape(rod).end.size() == 3);
  CHECK(norm(hook_shape(rod).end[1] - hook(200, 0.0, 0.012).end[1]) < 1e-16);
}

TEST_CASE("hook shape: a plate's part is met, and hangs, as its outline does", "[mechanism]") {
  Hooks plate;
  plate.form = HookForm::plate;
  plate.rim = 0.012;
  plate.inside = 0.020;
  plate.wrap = 180 * kDegree;
  plate.pieces = {{"curl", {{0.0, -0.034}, {0.040, -0.034}, {0.040, -0.022}, {0.0, -0.022}}, 0.001}};
  const HookShape shape = hook_shape(plate);
  CHECK(lowest_of_curl(shape, 0.0) == Approx(-0.041));
  // At lean 90 its across looks up: the lower side lies 35 mm below the centre.
  CHECK(lowest_of_curl(shape, 90 * kDegree) == Approx(-0.035));
  const ArmLine arm{{0.0, -0.050}, {-0.075, -0.050}, 0.006};
  const Outline solid(make_capsule(arm.a, arm.b, arm.radius));
  std::vector<Outline> pieces = true_end(shape, 0.02, 1e-10);
  pieces.emplace_back(shape.plates[0]);
  const auto closed = first_meeting(shape, arm, 0.0), slow = slow_meeting(pieces, solid, 0.0);
  REQUIRE(closed);
  REQUIRE(slow);
  CHECK(std::abs(*closed - *slow) < 1e-6);
}
