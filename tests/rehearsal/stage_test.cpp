#include "sim/rehearsal/stage.h"

#include <algorithm>

#include <catch2/catch.hpp>

#include "sim/rehearsal/recording_text.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

namespace stowpath {
namespace {

constexpr double kStep = 1.0 / 960.0;

// The demo without its faults, driven by hand.
struct Driven {
  explicit Driven(const RehearsalOptions& options = {.comes_down = false})
      : scene(parse_scene(testing::rig_text("demo-cured"), "demo-cured")),
        model(build_model(scene)),
        stage(scene, model, options, kStep) {}
  void run_to(double time) {
    if (stage.time() == 0.0) stage.start();
    while (stage.time() < time) stage.advance();
  }
  std::string text() { return write_recording(stage.report().recording); }

  Scene scene;
  Model model;
  Stage stage;
};

bool in_order(const std::vector<RecordedEvent>& events) {
  return std::is_sorted(events.begin(), events.end(),
                        [](const RecordedEvent& a, const RecordedEvent& b) { return a.time < b.time; });
}

long long count(const RehearsalReport& report, RecordedEventKind kind) {
  const auto& events = report.recording.events;
  return std::count_if(events.begin(), events.end(), [&](const RecordedEvent& event) { return event.kind == kind; });
}

TEST_CASE("stage: driven from outside, a line let go gives the bits of the same run by options", "[rehearsal]") {
  Driven asked({.let_go = 12.0}), driven;
  REQUIRE(asked.stage.run());
  driven.run_to(12.0);
  driven.stage.let_go();
  while (!driven.stage.finished()) driven.stage.advance();
  driven.stage.close();
  CHECK(bool(driven.text() == asked.text()));
}

TEST_CASE("stage: however many steps are taken at a time, the bits are the same", "[rehearsal]") {
  Driven one, many;
  many.stage.start();
  one.run_to(4.0);
  while (many.stage.time() < one.stage.time()) many.stage.advance(static_cast<int>(4.0 / kStep) / 8);
  one.run_to(many.stage.time());
  CHECK(bool(one.text() == many.text()));
}

TEST_CASE("stage: what happened can be read while it runs, in order of time", "[rehearsal]") {
  Driven driven;
  driven.stage.start();
  while (!driven.stage.finished()) {
    driven.stage.advance(960);
    CHECK(in_order(driven.stage.report().recording.events));
  }
  const std::string before = driven.text();
  driven.stage.close();
  CHECK(bool(driven.text() == before));
  CHECK(driven.stage.report().moves.size() == 4);
}

TEST_CASE("stage: let go before it is on, the line changes nothing and that is told; breaking later, it does",
          "[rehearsal]") {
  Driven driven;
  driven.stage.start();
  driven.stage.let_go();
  CHECK_FALSE(driven.stage.report().aftermath);
  REQUIRE(driven.stage.report().not_tried.size() == 1);
  CHECK(driven.stage.report().not_tried[0] == "the line let go at 0.0 s (it is not on then)");
  CHECK(count(driven.stage.report(), RecordedEventKind::let_go) == 0);
  driven.run_to(20.0);
  CHECK(driven.stage.crew().line().hand > 0.0);
  driven.stage.break_line();
  REQUIRE(driven.stage.report().aftermath);
  CHECK_FALSE(driven.stage.report().aftermath->nothing);
  driven.run_to(24.0);
  CHECK(driven.stage.crew().line().hand == 0.0);
  CHECK(driven.stage.report().aftermath->top_speed > 0.5);
}

TEST_CASE("stage: pushes at any moment add up, and each is watched", "[rehearsal]") {
  const auto swing = [](int pushes) {
    Driven driven;
    driven.run_to(0.5);
    for (int i = 0; i < pushes; ++i) driven.stage.push({60.0, 1.1, 0.5});
    driven.run_to(2.0);
    return driven.stage.report().push_swing.value();
  };
  CHECK(swing(3) > 1.5 * swing(1));
  Driven driven;
  driven.stage.start();
  driven.stage.push({60.0, 1.1, 0.5});
  driven.run_to(1.0);
  driven.stage.gust({12.0, 0.5});
  const auto& events = driven.stage.report().recording.events;
  CHECK(std::count_if(events.begin(), events.end(), [](const RecordedEvent& event) {
          return event.kind == RecordedEventKind::pushed || event.kind == RecordedEventKind::gust;
        }) == 2);
}

}  // namespace
}  // namespace stowpath
