#include "sim/clearance/live_pose.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

const Move& move_of(const Model& model, MoveKind kind) {
  for (const Move& move : model.moves) {
    if (move.kind == kind) return move;
  }
  throw std::logic_error("no such move");
}

const Move& move_numbered(const Model& model, int index, MoveKind kind) {
  for (const Move& move : model.moves) {
    if (move.index == index && move.kind == kind) return move;
  }
  throw std::logic_error("no such move");
}

// A bar of one section, 2 m long and a tenth thick, hung 3 m up, before a post of a tenth across.
Model bar_before_post(Vec2 post, Interval stations = {0.0, 8.0}) {
  Model model;
  model.linkage.pivot = {0.0, 3.0};
  model.linkage.length = {2.0, 0.0, 0.0};
  model.stair.push_back({PartKind::side_rail, "bar", 0, make_capsule({0.0, 0.0}, {2.0, 0.0}, 0.05), {{-0.25, 0.25}}});
  model.room.push_back({PartKind::obstacle, "post", {{post}, 0.05}, {stations}});
  Move lift;
  lift.index = 1;
  lift.segments.resize(1);
  model.moves.push_back(lift);
  return model;
}

Segment swing(double from, double to, double station = 4.0) {
  Segment out;
  out.from.station = out.to.station = station;
  out.from.lean = from;
  out.to.lean = to;
  return out;
}

bool says(const PoseMeeting& m, const std::string& a, const std::string& b) { return m.parts[0] == a && m.parts[1] == b; }

}  // namespace

TEST_CASE("live pose: a bar before a post, by hand", "[clearance][live]") {
  const Model model = bar_before_post({0.9, 1.5});
  const PoseWatch watch(model);
  const PoseNews news = watch.at({4.0, 0.0, {}}, model.moves[0]);
  REQUIRE(news.closest);
  CHECK(says(*news.closest, "bar", "post"));
  CHECK(news.closest->clearance == Approx(0.8).epsilon(1e-12));  // 0.9 out, less two radii
  CHECK(news.closest->witness.on_a.x == Approx(0.05));
  CHECK(news.closest->witness.on_b.x == Approx(0.85));
  CHECK(news.met.empty());
  CHECK_FALSE(PoseWatch(bar_before_post({1.2, 1.5})).at({4.0, 0.0, {}}, model.moves[0]).closest);  // over a metre away
}

TEST_CASE("live pose: beside a thing along the rail, the clearance is that of the prisms", "[clearance][live]") {
  const Model model = bar_before_post({0.4, 1.5}, {5.25, 6.0});
  const PoseNews news = PoseWatch(model).at({4.6, 0.0, {}}, model.moves[0]);
  REQUIRE(news.closest);
  CHECK(news.closest->side_view == Approx(0.3));
  CHECK(news.closest->clearance == Approx(0.5));  // 0.4 m along the rail, 0.3 m off it: 3-4-5
}

TEST_CASE("live pose: a way ends where the bar first touches the post", "[clearance][live]") {
  const Vec2 post{1.2, 1.5};
  const Model model = bar_before_post(post);
  const double lean = std::atan2(post.x, 3.0 - post.y) - std::asin(0.1 / std::hypot(post.x, 3.0 - post.y));
  const Segment way = swing(0.0, 80.0 * kDegree);
  const FreeWay free = PoseWatch(model).free_way(way, model.moves[0]);
  REQUIRE(free.held_by);
  CHECK(says(*free.held_by, "bar", "post"));
  const double reached = free.u * way.to.lean;
  CHECK(reached <= lean);
  CHECK(reached == Approx(lean).margin(1e-4));
}

TEST_CASE("live pose: a way past the post along the rail is free, and a way away from a touch is not held",
          "[clearance][live]") {
  const Model model = bar_before_post({1.2, 1.5}, {6.0, 7.0});
  const PoseWatch watch(model);
  CHECK(watch.free_way(swing(0.0, 1.3), model.moves[0]).u == 1.0);
  const FreeWay away = watch.free_way(swing(0.7, 0.0, 6.5), model.moves[0]);  // within the post from the start
  CHECK(away.u == 1.0);
  CHECK_FALSE(away.held_by);
}

TEST_CASE("live pose: rolling, a way ends at the post's side", "[clearance][live]") {
  const Model model = bar_before_post({0.0, 1.5}, {6.0, 7.0});
  Segment roll;
  roll.from.station = 4.0;
  roll.to.station = 8.0;
  const FreeWay free = PoseWatch(model).free_way(roll, model.moves[0]);
  REQUIRE(free.held_by);
  CHECK(4.0 + free.u * 4.0 == Approx(5.75).margin(1e-4));  // half the stair's width before it
  CHECK(4.0 + free.u * 4.0 <= 5.75);
}

TEST_CASE("live pose: stretches of stations are refused", "[clearance][live]") {
  const Model model = bar_before_post({1.2, 1.5});
  Segment roll = swing(0.0, 0.0);
  roll.stations = {1.0, 2.0};
  CHECK_THROWS_AS(PoseWatch(model).free_way(roll, model.moves[0]), std::invalid_argument);
}

TEST_CASE("live pose: it says what the dry fit says of the same poses", "[clearance][live]") {
  for (const char* name : {"demo", "demo-cured", "costume-loft", "three-section"}) {
    const Model model = model_of(gallery_text(name));
    const DryFit fit = dry_fit(model);
    const PoseWatch watch(model);
    for (const MoveResult& r : fit.moves) {
      if (r.closest[0].empty()) continue;
      const PoseNews news = watch.at(r.closest_at, move_numbered(model, r.index, r.kind));
      CAPTURE(name, r.index);
      REQUIRE(news.closest);
      CHECK(news.closest->clearance == Approx(r.at_most).margin(1e-6));
    }
    for (const Finding& f : fit.findings) {
      if (f.kind == FindingKind::build || f.kind == FindingKind::undecided) continue;
      const PoseNews news = watch.at(f.worst, move_numbered(model, f.moves.back(), f.move_kinds.back()));
      CAPTURE(name, f.id, f.parts[0], f.parts[1]);
      CHECK(std::any_of(news.met.begin(), news.met.end(),
                        [&](const PoseMeeting& m) { return says(m, f.parts[0], f.parts[1]); }));
    }
  }
}

TEST_CASE("live pose: the demo's lift is held by the strip light, and zones hold nothing", "[clearance][live]") {
  const Model model = model_of(gallery_text("demo"));
  const Move& lift = move_of(model, MoveKind::lift);
  const FreeWay free = PoseWatch(model).free_way(lift.segments[0], lift);
  REQUIRE(free.held_by);
  CHECK(free.held_by->parts[1] != "photo wall");
  CHECK(free.u < 1.0);
}
