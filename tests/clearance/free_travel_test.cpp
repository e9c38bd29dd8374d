#include "sim/clearance/free_travel.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

#include "tests/support/gallery.h"
#include "tests/support/random_rig.h"

using namespace stowpath;

namespace {

// One section that hangs plumb from (0, 2), with a board on it.
Model board_model(RoundedPolygon outline) {
  Model model;
  model.linkage = {{0.0, 2.0}, 1, {1.0}, {}, {}};
  model.stair.push_back({PartKind::side_rail, "side rail", 0, std::move(outline), {{-0.2, 0.2}}});
  return model;
}

void add(Model& model, const char* name, RoundedPolygon outline, Interval stations,
         PartKind kind = PartKind::obstacle) {
  model.room.push_back({kind, name, std::move(outline), {stations}});
}

Shift up() { return {{0.0, 0.0, {}}, {0.0, 1.0}, 0.5, {0.0, 0.0}, 0.0}; }

Move still() {
  Move move;
  move.state = ZoneState::moving;
  return move;
}

}  // namespace

TEST_CASE("free travel: straight up to a beam it is the height between, and the play on top", "[clearance]") {
  Model model = board_model(make_box({-0.1, -0.05}, {0.9, 0.05}));  // its top at 2.1
  add(model, "beam", make_box({-1.0, 2.35}, {1.0, 2.5}), {-1.0, 1.0});
  Shift shift = up();
  FreeTravel free = free_travel(model, still(), shift);
  REQUIRE(free.stopped);
  CHECK(free.at_most == Approx(0.25).margin(3e-7));  // steps end within 1e-7 of the overlap
  CHECK(free.at_most >= 0.25);
  CHECK(free.parts == std::array<std::string, 2>{"side rail", "beam"});
  shift.play = 0.004;
  CHECK(free_travel(model, still(), shift).at_most == Approx(0.254).margin(3e-7));
  shift.limit = 0.2;
  CHECK_FALSE(free_travel(model, still(), shift).stopped);
  CHECK(free_travel(model, still(), shift).at_most == 0.2);
}

TEST_CASE("free travel: round on round, by the triangle", "[clearance]") {
  Model model = board_model(make_disc({0.0, 0.0}, 0.1));
  add(model, "duct", make_disc({0.12, 2.4}, 0.1), {-1.0, 1.0});  // they touch 0.16 apart in height
  CHECK(free_travel(model, still(), up()).at_most == Approx(0.24).margin(3e-7));
  model.room[0].outline = make_disc({0.2001, 2.4}, 0.1);  // passes a tenth of a millimetre beside
  CHECK_FALSE(free_travel(model, still(), up()).stopped);
}

TEST_CASE("free travel: over stations the freest one counts", "[clearance]") {
  Model model = board_model(make_box({-0.1, -0.05}, {0.9, 0.05}));
  add(model, "joist", make_box({-1.0, 2.2}, {1.0, 2.5}), {-3.0, 0.0});
  add(model, "beam", make_box({-1.0, 2.3}, {1.0, 2.5}), {0.0, 3.0});
  Shift shift = up();
  shift.stations = {-1.0, 1.0};
  CHECK(free_travel(model, still(), shift).at_most == Approx(0.2).margin(3e-7));
  CHECK(free_travel(model, still(), shift).parts[1] == "beam");
  model.room[1].stations = {{0.5, 3.0}};  // from 0.2 to 0.3 the stair now passes between them
  CHECK_FALSE(free_travel(model, still(), shift).stopped);
}

TEST_CASE("free travel: zones, the floor, ropes and the hooks' own pipe stop nothing", "[clearance]") {
  Model model = board_model(make_box({-0.1, -0.05}, {0.9, 0.05}));
  add(model, "floor", make_box({-1.0, 2.2}, {1.0, 2.5}), {-1.0, 1.0}, PartKind::floor);
  model.zones.push_back({"picture", {ZoneState::always}, make_box({-1.0, 2.2}, {1.0, 2.5}), {-1.0, 1.0}});
  CHECK_FALSE(free_travel(model, still(), up()).stopped);
  add(model, "pipe", make_disc({0.0, 2.2}, 0.02), {-1.0, 1.0}, PartKind::pipe);
  CHECK(free_travel(model, still(), up()).at_most == Approx(0.08).margin(3e-7));
  model.stair[0].kind = PartKind::hook;
  CHECK_FALSE(free_travel(model, still(), up()).stopped);
}

// Never less than there is: just before it, nothing overlaps by what is wanted; there, something does.
TEST_CASE("free travel: an upper bound with a real contact, against the kernel on random shapes", "[clearance]") {
  std::mt19937 random(77);
  int stopped = 0;
  for (int n = 0; n < 1500; ++n) {
    using testing::draw;
    Model model = board_model(make_capsule({0.0, 0.0}, {draw(random, 0.05, 0.5), draw(random, -0.3, 0.3)}, 0.03));
    const Vec2 a{draw(random, -0.5, 0.5), draw(random, 1.6, 2.6)};
    add(model, "pole", make_capsule(a, a + Vec2{draw(random, 0.05, 0.4), draw(random, -0.4, 0.4)}, 0.02), {-1.0, 1.0});
    const double way = draw(random, 0.0, 6.2831853);
    Shift shift{
        {0.0, draw(random, 0.0, 1.5), {}}, {std::cos(way), std::sin(way)}, 0.8, {0.0, 0.0}, draw(random, 0.0, 0.01)};
    const FreeTravel free = free_travel(model, still(), shift);
    const Pose2 X_W = place_sections(model.linkage, shift.pose)[0];
    const auto apart = [&](double t) {
      const Pose2 shifted{X_W.p + t * shift.along, X_W.c, X_W.s};
      return distance(model.stair[0].outline, shifted, model.room[0].outline, {});
    };
    double least_before = 1e9;
    for (int k = 0; k <= 400; ++k) least_before = std::min(least_before, apart((free.at_most - 1e-6) * k / 400.0));
    if (free.at_most > 1e-6) CHECK(least_before > -shift.play);
    if (!free.stopped) continue;
    ++stopped;
    CHECK(apart(free.at_most) <= -shift.play + 1e-6);
  }
  CHECK(stopped > 300);
  CHECK(stopped < 1200);
}
