#include "sim/rehearsal/roll_work.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/rehearsal/rehearsal.h"
#include "sim/rehearsal/roll_push.h"
#include "sim/rehearsal/stage.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

namespace stowpath {
namespace {

constexpr double kStep = 1.0 / 960.0;

struct Rolled {
  explicit Rolled(const std::string& text, RehearsalOptions options = {}, bool comes_down = false)
      : scene(parse_scene(text, "scene")), model(build_model(scene)) {
    options.compare = false;
    options.comes_down = comes_down;
    if (!options.from) options.from = far_station(model);
    report = rehearse(scene, model, options);
  }
  const RollLeg& leg() const { return report.rolls.at(0); }
  bool happened(RecordedEventKind kind) const {
    const auto& events = report.recording.events;
    return std::any_of(events.begin(), events.end(), [&](const RecordedEvent& event) { return event.kind == kind; });
  }
  double when(RecordedEventKind kind) const {
    const auto& events = report.recording.events;
    return std::find_if(events.begin(), events.end(), [&](const RecordedEvent& event) { return event.kind == kind; })
        ->time;
  }

  Scene scene;
  Model model;
  RehearsalReport report;
};

RehearsalOptions held_at(double height, double force = 120.0) {
  RehearsalOptions options;
  options.hand.height = height;
  options.hand.force = force;
  return options;
}

const Rolled& demo() {
  static const Rolled rolled(testing::rig_text("demo"), held_at(2.2));
  return rolled;
}

TEST_CASE("roll in a procedure: the stair goes from the span's far end to its home, before the line is hooked on",
          "[rehearsal]") {
  const RollLeg& leg = demo().leg();
  CHECK(leg.from == Approx(demo().model.span.lo).margin(0.006));
  CHECK(leg.to == *demo().model.home);
  REQUIRE(leg.tries.size() == 1);
  CHECK(leg.tries[0].end == RollEnd::arrived);
  CHECK(leg.reached == Approx(leg.to).margin(kOnMark));
  CHECK_FALSE(leg.brought());
  // At the hand's pace, within what pressing harder at first and looking at the end add.
  const double walk = walking_time(leg.to - leg.from, 0.7);
  CHECK(leg.ends - leg.begins > walk);
  CHECK(leg.ends - leg.begins < walk + 2.0);
  CHECK(demo().when(RecordedEventKind::stands) == Approx(leg.ends));
  CHECK(demo().when(RecordedEventKind::hooked_on) >= leg.ends);
}

TEST_CASE("roll in a procedure: it takes what the push alone takes", "[rehearsal]") {
  PushOptions hand;
  hand.force = 120.0;
  hand.height = 2.2;
  const RollReport alone = roll_push(demo().scene, demo().model, hand);
  const RollTry& hold = demo().leg().tries[0];
  CHECK(hold.push_needed.value() == Approx(alone.runs[1].push_needed.value()));
  CHECK(hold.jam_friction == Approx(alone.jam_friction));
  CHECK(hold.greatest_push >= *hold.push_needed - 1.0);
  CHECK(hold.greatest_push <= 120.0);
}

TEST_CASE("roll in a procedure: frames go along with it, and stay home afterwards", "[rehearsal]") {
  const RollLeg& leg = demo().leg();
  double before = leg.from - 1e-6;
  for (const RecordedFrame& frame : demo().report.recording.frames) {
    if (frame.time < leg.ends) {
      CHECK(frame.station >= before - kOnMark);
      before = frame.station;
      CHECK(demo().model.moves.at(static_cast<std::size_t>(frame.move)).kind == MoveKind::roll);
    } else if (frame.time > leg.ends + kStep) {
      CHECK(frame.station == leg.to);
      CHECK(frame.push == 0.0);
      CHECK(frame.yaw == 0.0);
    }
  }
}

// Rolled there or standing there: the same stair, among the same things. What swings on the way up does not swing the
// same to the last bit, since the world is put together anew at home.
TEST_CASE("roll in a procedure: what follows is what follows at home", "[rehearsal]") {
  const Scene& scene = demo().scene;
  RehearsalOptions at_home = held_at(2.2);
  at_home.from = demo().model.home;
  const Rolled stood(testing::rig_text("demo"), at_home);
  REQUIRE(stood.report.rolls.size() == 1);
  CHECK(stood.leg().tries.empty());
  CHECK(stood.leg().ends == stood.leg().begins);
  const auto& went = demo().report.moves;
  const auto& there = stood.report.moves;
  REQUIRE(went.size() == there.size() + 1);
  for (std::size_t m = 0; m < there.size(); ++m) {
    CAPTURE(m);
    CHECK(went[m + 1].move == there[m].move);
    CHECK(went[m + 1].peak_pull == Approx(there[m].peak_pull).epsilon(0.1));
  }
  const auto pairs = [](const RehearsalReport& report) {
    std::vector<std::pair<std::string, std::string>> out;
    for (const TouchRun& run : report.touches) out.emplace_back(run.part, run.other);
    std::sort(out.begin(), out.end());
    return out;
  };
  CHECK(pairs(demo().report) == pairs(stood.report));
  CHECK(scene.procedure.size() == 7);
}

TEST_CASE("roll in a procedure: where it binds it is taken hold of higher, as the racking rule says", "[rehearsal]") {
  const Rolled low(testing::rig_text("demo"), held_at(1.1));
  const RollLeg& leg = low.leg();
  REQUIRE(leg.tries.size() == 2);
  CHECK(leg.tries[0].end == RollEnd::bound);
  CHECK_FALSE(leg.tries[0].push_needed);
  CHECK(leg.friction.hook > leg.tries[0].jam_friction);
  CHECK(leg.tries[1].height > leg.tries[0].height);
  CHECK(leg.tries[1].height <= kHighestHold);
  CHECK(leg.friction.hook < leg.tries[1].jam_friction);
  CHECK(leg.tries[1].end == RollEnd::arrived);
  CHECK(low.happened(RecordedEventKind::binds));
  CHECK_FALSE(low.happened(RecordedEventKind::brought));
}

TEST_CASE("roll in a procedure: a hand too weak leaves it, and the run goes on as though it had been brought",
          "[rehearsal]") {
  const Rolled weak(testing::rig_text("demo"), held_at(2.2, 20.0));
  const RollLeg& leg = weak.leg();
  REQUIRE(leg.tries.size() == 1);
  CHECK(leg.tries[0].end == RollEnd::too_weak);
  CHECK(*leg.tries[0].push_needed > 20.0);
  CHECK(leg.brought());
  CHECK(leg.reached == Approx(leg.from).margin(0.02));
  CHECK(weak.happened(RecordedEventKind::brought));
  CHECK(weak.happened(RecordedEventKind::hooked_on));
  CHECK(weak.report.recording.frames.back().station == *weak.model.home);
}

TEST_CASE("roll in a procedure: what stands in the way is met where the proof has it", "[rehearsal]") {
  const std::string crate =
      "obstacles:\n  - {name: crate, box: {out: [1500, 2400], up: [0, 600]}, stations: [2600, 2700]}\n";
  const Rolled met(testing::changed(testing::rig_text("demo"), "obstacles:\n", crate), held_at(2.2));
  const RollLeg& leg = met.leg();
  REQUIRE(leg.tries.size() == 1);
  CHECK(leg.tries[0].end == RollEnd::ran_into);
  REQUIRE(leg.tries[0].stop);
  CHECK(leg.tries[0].stop->thing == "crate");
  CHECK(leg.brought());
  const IntervalSet free = free_stations(span_site(met.scene, met.model), met.model.span);
  CHECK(leg.tries[0].stop->station == Approx(free.front().hi).margin(0.7 * kStep + 2.0 * kSpanSkin));
  CHECK(met.happened(RecordedEventKind::touch));
}

TEST_CASE("roll in a procedure: come down again, the stair is rolled back to where it was, held where it rolled before",
          "[rehearsal]") {
  const Rolled whole(testing::rig_text("demo-cured"), held_at(1.1), true);
  REQUIRE(whole.report.rolls.size() == 2);
  const RollLeg &there = whole.report.rolls[0], &back = whole.report.rolls[1];
  CHECK_FALSE(there.back);
  CHECK(back.back);
  CHECK(back.from == there.to);
  CHECK(back.to == there.from);
  REQUIRE(back.tries.size() == 1);
  CHECK(back.tries[0].height == Approx(there.tries.back().height));
  CHECK(back.tries[0].end == RollEnd::arrived);
  CHECK(back.begins >= whole.when(RecordedEventKind::hooked_off));
  CHECK(whole.report.recording.frames.back().station == there.from);
}

TEST_CASE("roll in a procedure: a stair that only rolls is rolled", "[rehearsal]") {
  for (const auto& [name, station] : {std::pair{"rolling-ladder", 2.5}, {"strap-rail", 2.1}, {"post-rail", 2.4}}) {
    CAPTURE(name);
    const Rolled rolled(testing::rig_text(name));
    REQUIRE(rolled.report.rolls.size() == 1);
    CHECK(rolled.leg().tries.at(0).end == RollEnd::arrived);
    CHECK(rolled.report.recording.frames.back().station == Approx(station).margin(1e-9));
  }
}

TEST_CASE("roll in a procedure: the raised stair is taken along at a walk, and that is said to be no rehearsal",
          "[rehearsal]") {
  std::string text = testing::rig_text("demo-cured");
  text = testing::changed(text, "rolls: no", "rolls: yes");
  text = testing::changed(text, ", lead: {out: 4400, up: 3900, station: 4170}", "");
  text = testing::changed(text, "tolerances:", "  - roll: 3000\ntolerances:");
  RehearsalOptions options = held_at(2.2);
  options.from = 4.34;
  const Rolled along(text, options);
  CHECK(along.report.recording.frames.back().station == Approx(3.0));
  const MoveRun& last = along.report.moves.back();
  CHECK(along.model.moves.at(static_cast<std::size_t>(last.move)).kind == MoveKind::roll);
  CHECK(last.ends - last.begins > 1.34 / 0.7);
  CHECK(along.report.rolls.size() == 1);  // the standing one alone
  const auto& said = along.report.cautions;
  CHECK(std::any_of(said.begin(), said.end(), [](const std::string& text_of) {
    return text_of.find("not rehearsed on the way") != std::string::npos;
  }));
}

TEST_CASE("roll in a procedure: a hand that cannot be there is told, and the rest is rehearsed", "[rehearsal]") {
  const Rolled high(testing::rig_text("rolling-ladder"), held_at(9.0));
  CHECK(high.leg().tries.empty());
  CHECK(high.leg().not_tried.find("between the floor and the rail") != std::string::npos);
  CHECK(high.leg().brought());
}

TEST_CASE("roll in a procedure: the stage has the same bits however it is driven", "[rehearsal]") {
  const Scene scene = parse_scene(testing::rig_text("rolling-ladder"), "ladder");
  const Model model = build_model(scene);
  const RehearsalOptions options{.from = far_station(model)};
  Stage one(scene, model, options, kStep), many(scene, model, options, kStep);
  one.start();
  many.start();
  for (int i = 0; i < 4800; ++i) one.advance();
  for (int i = 0; i < 100; ++i) many.advance(48);
  CHECK(one.crew().meant().station == many.crew().meant().station);
  CHECK(one.crew().roller().yaw() == many.crew().roller().yaw());
  CHECK(std::abs(one.crew().meant().station - options.from.value()) > 0.5);
}

}  // namespace
}  // namespace stowpath
