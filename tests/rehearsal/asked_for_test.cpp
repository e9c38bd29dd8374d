// Whatever is asked for comes, or is said not to have come.
#include <algorithm>
#include <numbers>

#include <catch2/catch.hpp>

#include "sim/rehearsal/rehearsal.h"
#include "sim/scene/reader.h"
#include "tests/support/free_stair.h"
#include "tests/support/gallery.h"

namespace stowpath {
namespace {

using Untried = std::vector<std::string>;

constexpr double kDegree = std::numbers::pi / 180.0;

RehearsalReport rehearse_once(const Scene& scene, RehearsalOptions options) {
  options.compare = false;
  return rehearse(scene, build_model(scene), options);
}

std::optional<double> when(const RehearsalReport& report, RecordedEventKind kind) {
  for (const RecordedEvent& event : report.recording.events)
    if (event.kind == kind) return event.time;
  return std::nullopt;
}

TEST_CASE("asked for: a push after the line is gone comes, and what it does is watched", "[rehearsal]") {
  const RehearsalOptions lost{.let_go = 20.0};
  const RehearsalReport alone = rehearse_once(testing::free_stair(), lost);
  REQUIRE(alone.aftermath);
  REQUIRE(alone.aftermath->ends < 34.0);
  const RehearsalReport pushed =
      rehearse_once(testing::free_stair(), {.let_go = 20.0, .push = Push{200.0, 1.1, 1.0}, .when = 40.0});
  CHECK(when(pushed, RecordedEventKind::pushed).value_or(0.0) == Approx(40.0).margin(2e-3));
  CHECK(*pushed.push_swing > 1.0 * kDegree);
  CHECK(pushed.seconds > 49.0);
  CHECK(pushed.aftermath->ends > 40.0);
  CHECK(pushed.not_tried.empty());
  const RehearsalReport blown =
      rehearse_once(testing::free_stair(), {.let_go = 20.0, .gust = Gust{12.0, 1.0}, .when = 36.0});
  CHECK(when(blown, RecordedEventKind::gust).value_or(0.0) == Approx(36.0).margin(2e-3));
}

TEST_CASE("asked for: a stair that stands without a pin is pushed, though it was at rest before", "[rehearsal]") {
  const Scene scene = parse_scene(testing::rig_text("demo-cured"), "demo-cured");
  const RehearsalReport report = rehearse_once(scene, {.no_pins = {0}, .push = Push{120.0, 1.1, 2.0}});
  CHECK(when(report, RecordedEventKind::pushed).value_or(0.0) == Approx(1.0).margin(2e-3));
}

TEST_CASE("asked for: a line let go that is not on is no loss, and is said", "[rehearsal]") {
  const RehearsalReport early = rehearse_once(testing::free_stair(), {.comes_down = false, .let_go = 0.0});
  CHECK_FALSE(early.aftermath);
  CHECK(early.not_tried == Untried{"the line let go at 0.0 s (it is not on then)"});
  CHECK(early.moves.back().leans[0] > 80 * kDegree);
  const RehearsalReport broken = rehearse_once(testing::free_stair(), {.comes_down = false, .line_breaks = 0.0});
  CHECK(broken.not_tried == Untried{"the line's breaking at 0.0 s (it is not on then)"});
  const RehearsalReport whole = rehearse_once(testing::free_stair(), {});
  const RehearsalReport late = rehearse_once(testing::free_stair(), {.let_go = whole.seconds + 5.0});
  REQUIRE(late.not_tried.size() == 1);
  CHECK_FALSE(late.aftermath);
}

TEST_CASE("asked for: what the run does not come to is said", "[rehearsal]") {
  Scene scene = testing::free_stair();
  scene.procedure.clear();
  const RehearsalReport late =
      rehearse_once(scene, {.step = 1.0 / 30.0, .push = Push{100.0, 1.1, 1.0}, .when = 3000.0});
  CHECK(late.not_tried == Untried{"the push at 3000.0 s (the run ends before that)"});
  const RehearsalReport gust = rehearse_once(testing::free_stair(), {.let_go = 10.0, .gust = Gust{12.0, 1.0}});
  CHECK(gust.not_tried == Untried{"the gust, once parked (the stair never was)"});
  CHECK_FALSE(when(gust, RecordedEventKind::gust));
}

// A short curl and a pick nearer the rail than the centre of mass.
TEST_CASE("asked for: after the stair has turned over, a line let go is said not to have been tried", "[rehearsal]") {
  Scene scene = parse_scene(testing::rig_text("demo-cured"), "demo-cured");
  scene.hoist->pick.along = 0.7;
  scene.stair.hooks.wrap = 130 * kDegree;
  const RehearsalReport turned = rehearse_once(scene, {.comes_down = false});
  REQUIRE(turned.aftermath);
  const RehearsalReport later = rehearse_once(scene, {.comes_down = false, .let_go = turned.aftermath->begins + 1.0});
  REQUIRE(later.not_tried.size() == 1);
  CHECK(later.not_tried[0].find("before that, the stair turns over about its pick") != std::string::npos);
}

}  // namespace
}  // namespace stowpath
