#include "render/studio/live_run.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>

#include "render/command/rehearse_command.h"
#include "sim/rehearsal/recording_text.h"
#include "sim/scene/reader.h"
#include "sim/trade/figure.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

constexpr double kForever = std::numeric_limits<double>::infinity();

struct Cured {
  Scene scene = parse_scene(rig_text("demo-cured"), "demo-cured");
  Model model = build_model(scene);

  /// As the command records it.
  std::string commanded(const WhatIfs& asked) const {
    RehearsalOptions options = rehearsal_options(asked);
    options.compare = false;
    Recording recording = rehearse(scene, model, options).recording;
    recording.options = what_ifs_text(asked);
    return write_recording(recording);
  }
};

int move_of(const Model& model, MoveKind kind) {
  const auto found =
      std::find_if(model.moves.begin(), model.moves.end(), [&](const Move& m) { return m.kind == kind; });
  return static_cast<int>(found - model.moves.begin());
}

// Into the hang: the line is on, and there is something to fall. Off any whole hundredth.
void run_into_hang(LiveRun& run) {
  const int hang = move_of(run.model(), MoveKind::hang);
  while (!run.begins(hang)) run.run(run.time() + 0.1, kForever);
  run.run(*run.begins(hang) + 0.5037, kForever);
}

// In slices, as a window runs it.
void run_out(LiveRun& run) {
  while (!run.finished() && !run.refused()) run.run(run.time() + 1.0 / 60.0, kForever);
}

// Steps at which a run ends depend on its slices: what was recorded up to a time does not.
std::string up_to(Recording recording, double time) {
  std::erase_if(recording.frames, [&](const RecordedFrame& frame) { return frame.time > time; });
  std::erase_if(recording.events, [&](const RecordedEvent& event) { return event.time > time; });
  recording.account.reset();  // of the whole run
  return write_recording(recording);
}

}  // namespace

TEST_CASE("live run: a line let go with a key records the command's bits", "[studio][rehearsal]") {
  const Cured cured;
  LiveRun run(cured.scene, cured.model, {});
  run_into_hang(run);
  run.add({TryKind::let_go});
  const double time = run.tried().front().time;
  CHECK(time >= run.time());
  CHECK(time < run.time() + 0.01);
  while (!run.finished()) run.run(run.time() + 1e-6, kForever);
  WhatIfs asked;
  asked.let_go = format_decimal(Nominal{time}, 2) + "s";
  CHECK(bool(write_recording(run.recording()) == cured.commanded(asked)));
}

TEST_CASE("live run: a push and a gust at their times record the command's bits", "[studio][rehearsal]") {
  const Cured cured;
  const std::string push = "150N at 1.2m outward for 0.5s", gust = "12 m/s for 2s";
  for (const bool blows : {false, true}) {
    WhatIfs asked;
    (blows ? asked.gust : asked.push) = blows ? gust : push;
    asked.when = "6.50s";
    const RehearsalOptions options = rehearsal_options(asked);
    LiveRun run(cured.scene, cured.model, {});
    run.run(6.4951, kForever);
    Try what{blows ? TryKind::gust : TryKind::push, 0.0, blows ? gust : push, {}, {}};
    if (blows) what.gust = *options.gust;
    if (!blows) what.push = *options.push;
    run.add(what);
    run.run(16.0, kForever);
    RehearsalOptions same = options;
    same.compare = false;
    Recording commanded = rehearse(cured.scene, cured.model, same).recording;
    commanded.options = what_ifs_text(asked);
    CHECK(bool(up_to(run.recording(), 15.0) == up_to(commanded, 15.0)));
  }
}

TEST_CASE("live run: a rope too stiff for the step has it run again as the command does", "[studio][rehearsal]") {
  const Cured cured;
  constexpr double kCoarse = 1.0 / 60.0;
  RehearsalOptions coarse;
  coarse.step = kCoarse;
  LiveRun run(cured.scene, cured.model, coarse);
  run_out(run);
  REQUIRE_FALSE(run.refused());
  CHECK(run.recording().step < kCoarse);
  coarse.compare = false;
  CHECK(bool(up_to(run.recording(), 20.0) == up_to(rehearse(cured.scene, cured.model, coarse).recording, 20.0)));
}

TEST_CASE("live run: taken up before a try, it goes on as though that had not been", "[studio][rehearsal]") {
  const Cured cured;
  LiveRun plain(cured.scene, cured.model, {}), meddled(cured.scene, cured.model, {});
  meddled.run(5.0, kForever);
  meddled.add({TryKind::line_breaks});
  meddled.run(7.0, kForever);
  CHECK(meddled.report().aftermath.has_value());
  meddled.take_up(4.0);
  CHECK(meddled.time() == 0.0);
  for (LiveRun* run : {&plain, &meddled}) run->run(8.0, kForever);
  CHECK(bool(write_recording(plain.recording()) == write_recording(meddled.recording())));
}

TEST_CASE("live run: it asks of its options what the command's rehearsal does", "[studio]") {
  const Cured cured;
  const auto refused = [&](const RehearsalOptions& options) {
    CHECK_THROWS_AS(rehearse(cured.scene, cured.model, options), std::invalid_argument);
    CHECK_THROWS_AS(LiveRun(cured.scene, cured.model, options), std::invalid_argument);
  };
  refused({.step = 0.0});
  refused({.let_go = -1.0});
  refused({.no_pins = {1}});
  refused({.no_pins = {-1}});
  refused({.frame = 0.0});
}

TEST_CASE("live run: it keeps to its budget of time, and finishes the step", "[studio]") {
  const Cured cured;
  LiveRun run(cured.scene, cured.model, {});
  run.run(1000.0, 0.0);
  CHECK(run.time() > 0.0);
  CHECK(run.time() <= 8.5 * run.recording().step);
}

TEST_CASE("live run: each touch has its place, where both parts are", "[studio][rehearsal]") {
  const Cured cured;
  LiveRun run(cured.scene, cured.model, {});
  run_into_hang(run);
  run.add({TryKind::let_go});
  run_out(run);
  REQUIRE_FALSE(run.touches().empty());
  int floors = 0;
  for (const HappenedAt& touch : run.touches()) {
    if (touch.event.other != "floor") continue;
    ++floors;
    CHECK(std::abs(touch.at.y - cured.model.floor_level) < 2e-3);  // the world's skin
  }
  CHECK(floors > 0);
}

TEST_CASE("live run: beside each frame stands what was meant then, and the push that lasts", "[studio]") {
  const Cured cured;
  LiveRun run(cured.scene, cured.model, {});
  run.run(3.0, kForever);
  run.add({TryKind::push, 0.0, "200N at 1m outward for 0.5s", {200.0, 1.0, 0.5}, {}});
  run.run(5.0, kForever);
  CHECK(run.at(2.9).push == std::nullopt);
  REQUIRE(run.at(3.3).push.has_value());
  CHECK(run.at(3.3).push->force == 200.0);
  CHECK(run.at(3.3).push->at.y - cured.model.floor_level == Approx(1.0).margin(1e-3));
  CHECK(run.at(3.9).push == std::nullopt);
  CHECK(run.at(0.0).meant.lean == Approx(cured.model.working_lean));
  CHECK(run.at(2.0).frame.time <= 2.0);
  CHECK(run.at(2.0).frame.time > 1.95);
}
