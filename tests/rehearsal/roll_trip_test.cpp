#include "sim/rehearsal/roll_trip.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <string>

#include "sim/clearance/stations.h"
#include "sim/geometry/distance.h"
#include "sim/hoist/jam.h"
#include "sim/rehearsal/roll_recording.h"
#include "sim/scene/reader.h"
#include "sim/trade/us_units.h"
#include "tests/support/gallery.h"

using namespace stowpath;

namespace {

constexpr double kHooks = 0.52, kMass = 30.0;

SpanStair plain_stair() {
  SpanStair stair;
  stair.mass = kMass;
  stair.inertia = 9.0;
  stair.hooks = {{-0.5 * kHooks, 0.5 * kMass * kGravity}, {0.5 * kHooks, 0.5 * kMass * kGravity}};
  stair.hook_rod = stair.pipe_radius = 0.017;
  stair.hook_inside = 0.019;
  stair.caster_radius = 0.0375;
  return stair;
}

RollPlan plan_to(double way, double mu, double force, double offset = 0.0) {
  RollPlan plan;
  plan.stair = plain_stair();
  plan.site = free_rail();
  plan.friction = {mu, 0.0, 0.0};
  plan.push = {{0.0, offset}, {std::copysign(force, way), 0.0}};
  plan.to = way;
  return plan;
}

RollTrip gone(RollPlan plan) {
  RollTrip trip(std::move(plan));
  while (trip.end() == RollEnd::under_way) trip.advance();
  return trip;
}

// Stations at which the standing stair is in something, by the proof's own closed form on exact distances.
IntervalSet blocked_by_the_proof(const Model& model) {
  const SectionPoses poses = place_sections(model.linkage, {0.0, model.working_lean, {}});
  IntervalSet blocked;
  for (const StairPart& part : model.stair) {
    Outline mover;
    mover.place(Outline(part.outline), poses.at(static_cast<std::size_t>(part.section)));
    for (const RoomPart& thing : model.room) {
      const bool carried = part.kind == PartKind::hook && thing.kind == PartKind::pipe;
      const bool stands = part.kind == PartKind::caster && thing.kind == PartKind::floor;
      if (carried || stands) continue;
      const double d = signed_distance(mover, Outline(thing.outline));
      if (d >= 0.0) continue;
      for (const Interval& met : blocked_stations(d, 0.0, part.stations, thing.stations)) blocked.push_back(met);
    }
  }
  return unite(std::move(blocked));
}

std::string in_mm(double metres) { return std::to_string(static_cast<int>(std::lround(1000.0 * metres))); }

// The ladder of the map room, with crates that stand about it: some in its way, some beside it.
std::string cluttered(std::mt19937& random) {
  std::uniform_real_distribution<double> out(0.75, 2.0), up(0.0, 1.6), station(0.3, 4.6), size(0.05, 0.5);
  std::string crates = "obstacles:\n";
  for (int i = 0; i < 3; ++i) {
    const double o = out(random), u = up(random), s = station(random);
    crates += "  - {name: crate " + std::to_string(i + 1) + ", box: {out: [" + in_mm(o) + ", " +
              in_mm(o + size(random)) + "], up: [" + in_mm(u) + ", " + in_mm(u + size(random)) + "]}, stations: [" +
              in_mm(s) + ", " + in_mm(s + size(random)) + "]}\n";
  }
  return testing::changed(testing::rig_text("rolling-ladder"), "obstacles:\n", crates);
}

const Interval* stretch_of(const IntervalSet& free, double station) {
  for (const Interval& stretch : free)
    if (stretch.contains(station)) return &stretch;
  return nullptr;
}

}  // namespace

TEST_CASE("roll trip: a way takes its length over the hand's pace, and what starting and stopping add", "[rehearsal]") {
  const double three = gone(plan_to(3.0, 0.15, 200.0)).time(), five = gone(plan_to(5.0, 0.15, 200.0)).time();
  // Two metres more at the pace, within 1 %: the same start and the same stop.
  CHECK(five - three == Approx(2.0 / 0.7).epsilon(0.01));
  // Pressed harder over three quarters of a second first, and looked at for half a second on the mark.
  CHECK(three > walking_time(3.0, 0.7));
  CHECK(three < walking_time(3.0, 0.7) + 1.5);
  // (3 - 0.7) / 0.7 + 2 * 0.7 / 0.7 by hand, gaining 0.7 m/s each second.
  CHECK(walking_time(3.0, 0.7) == Approx(2.3 / 0.7 + 2.0));
  CHECK(walking_time(-0.175, 0.7) == Approx(1.0));
}

TEST_CASE("roll trip: it comes to rest on its mark, either way, and takes no more than the hand has", "[rehearsal]") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> way(-4.0, 4.0), mu(0.05, 0.4);
  for (int draw = 0; draw < 12; ++draw) {
    const double to = way(random);
    const RollTrip trip = gone(plan_to(to, mu(random), 160.0));
    CAPTURE(to);
    CHECK(trip.end() == RollEnd::arrived);
    CHECK(trip.state().station == Approx(to).margin(kOnMark));
    CHECK(trip.greatest_push() <= 160.0);
  }
}

TEST_CASE("roll trip: on its way the hand gives what the drag takes, mu times the load", "[rehearsal]") {
  RollTrip trip(plan_to(6.0, 0.25, 200.0));
  while (trip.time() < 4.0) trip.advance();
  // Coulomb: a steady walk needs the drag and no more; 1 % is what is left of the way to it.
  CHECK(trip.push() == Approx(0.25 * kMass * kGravity).epsilon(0.01));
  CHECK(trip.state().speed == Approx(0.7).epsilon(0.01));
}

TEST_CASE("roll trip: a push that is too weak is told from hooks that jam by the racking rule", "[rehearsal]") {
  const double drag = 0.3 * kMass * kGravity;
  CHECK(gone(plan_to(2.0, 0.3, 0.97 * drag)).end() == RollEnd::too_weak);
  CHECK(gone(plan_to(2.0, 0.3, 1.1 * drag)).end() == RollEnd::arrived);
  // Beyond L / (2 mu) off the guide line, well past what the jaws shift it by, no push moves it; well inside a hard one does, though 100 N do not.
  CHECK(gone(plan_to(2.0, 0.3, 200.0, 1.2 * jam_offset(kHooks, 0.3))).end() == RollEnd::bound);
  CHECK(gone(plan_to(2.0, 0.3, 100.0, 0.7 * jam_offset(kHooks, 0.3))).end() == RollEnd::too_weak);
  CHECK(gone(plan_to(2.0, 0.3, 400.0, 0.7 * jam_offset(kHooks, 0.3))).end() == RollEnd::arrived);
}

TEST_CASE("roll trip: what stands in its way ends it there, at the pace it had", "[rehearsal]") {
  RollPlan plan = plan_to(3.0, 0.2, 200.0);
  plan.site.bumps.push_back({"hook curl", "bracket arm", {0.25, 0.27}, {2.0, 2.02}, {-0.03, 0.03}});
  const RollTrip trip = gone(plan);
  CHECK(trip.end() == RollEnd::ran_into);
  REQUIRE(trip.stop());
  CHECK(trip.stop()->part == "hook curl");
  CHECK(trip.stop()->station == Approx(1.73).margin(0.7 / 960.0 + 2.0 * kSpanSkin));
  CHECK(trip.stop()->speed == Approx(0.7).epsilon(0.02));
}

TEST_CASE("roll trip: a pipe without stops is left at its end", "[rehearsal]") {
  RollPlan plan = plan_to(3.0, 0.2, 200.0);
  plan.site.pipe = {-1.0, 1.5};
  const RollTrip trip = gone(plan);
  CHECK(trip.end() == RollEnd::left_pipe);
  CHECK(trip.state().station == Approx(1.5 - 0.5 * kHooks).margin(0.7 / 960.0));
}

TEST_CASE("roll trip: the same trip twice ends in the same bits", "[rehearsal]") {
  const RollTrip a = gone(plan_to(1.3, 0.3, 150.0, 0.4)), b = gone(plan_to(1.3, 0.3, 150.0, 0.4));
  CHECK(a.time() == b.time());
  CHECK(a.state().station == b.state().station);
  CHECK(a.greatest_yaw() == b.greatest_yaw());
}

// The exact distance decides the side views, the proof's closed form the stations: the world may stop within its skin
// and one step's way of where they say, and nowhere else.
TEST_CASE("roll trip: it runs into something where the proof has blocked stations, and nowhere else", "[rehearsal]") {
  std::mt19937 random(20);
  constexpr double kSkin = 0.7 / 480.0 + 2.0 * kSpanSkin;
  int arrived = 0, ran_into = 0;
  for (int draw = 0; draw < 100; ++draw) {
    const Scene scene = parse_scene(cluttered(random), "clutter");
    const Model model = build_model(scene);
    const IntervalSet free = subtract(model.span, blocked_by_the_proof(model));
    std::uniform_real_distribution<double> anywhere(model.span.lo, model.span.hi);
    const double wanted = anywhere(random), to = anywhere(random);
    if (free.empty()) continue;
    const double from = nearest_free(free, wanted);
    const Interval* stretch = stretch_of(free, from);
    REQUIRE(stretch != nullptr);
    if (stretch->length() < 4.0 * kSkin || std::abs(to - from) < 2.0 * kSkin) continue;
    RollPlan plan{span_stair(scene, model), span_site(scene, model), {0.05, 0.3, 0.001}, {}, 0.7, 0.0, to, 1.0 / 480.0};
    plan.from = std::clamp(from, stretch->lo + kSkin, stretch->hi - kSkin);
    plan.push = {{0.0, 0.1}, {std::copysign(200.0, to - plan.from), 0.0}};
    const RollTrip trip = gone(plan);
    CAPTURE(draw, plan.from, to, stretch->lo, stretch->hi);
    if (trip.end() == RollEnd::arrived) {
      ++arrived;
      CHECK(to > stretch->lo - kOnMark - kSkin);
      CHECK(to < stretch->hi + kOnMark + kSkin);
      continue;
    }
    ++ran_into;
    REQUIRE(trip.end() == RollEnd::ran_into);
    const double end = to > plan.from ? stretch->hi : stretch->lo;
    CHECK(trip.stop()->station == Approx(end).margin(kSkin));
    CHECK((to > stretch->hi - kOnMark - kSkin || to < stretch->lo + kOnMark + kSkin));
  }
  CHECK(arrived > 12);
  CHECK(ran_into > 12);
}

TEST_CASE("roll recording: frames follow the trip, and its end is told", "[rehearsal]") {
  const Scene scene = parse_scene(testing::rig_text("demo"), "demo");
  const Model model = build_model(scene);
  PushOptions options;
  options.force = -120.0;
  options.height = 2.2;
  const RollReport report = roll_push(scene, model, options);
  const Recording recording = record_roll(scene, model, report);
  REQUIRE(recording.frames.size() > 20);
  CHECK(recording.frames.front().station == Approx(report.start));
  CHECK(recording.frames.back().station == Approx(model.span.lo).margin(0.7 / 960.0 + 2.0 * kSpanSkin));
  CHECK(recording.frames.back().push < 0.0);
  // The stair stands as it works: its foot on the floor, its hooks' circle on the pivot.
  CHECK(recording.frames[5].sections[0].origin.x == Approx(model.linkage.pivot.x));
  CHECK(recording.events.front().kind == RecordedEventKind::takes_hold);
  CHECK(recording.events.back().kind == RecordedEventKind::touch);
  CHECK(recording.events.back().other == "rail stop");
  CHECK_THROWS_AS(record_roll(scene, model, report, 0.0), std::invalid_argument);
}
