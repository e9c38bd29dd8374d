#include "sim/hoist/seat.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "sim/hoist/seat_findings.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using testing::changed;
using testing::gallery_text;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

struct Seated {
  Scene scene;
  Model model;
  SeatReport seat;

  explicit Seated(const std::string& text, const SeatOptions& options = {})
      : scene(parse_scene(text, "seated.yaml")), model(build_model(scene)), seat(look_at_seat(scene, model, options)) {}

  std::vector<Finding> findings() const { return seat_findings(model, seat); }
};

std::string low_pick(const std::string& wrap) {
  std::string text =
      changed(gallery_text("demo-cured"), "along: 1700, across: 0, spread: 0", "along: 700, across: 0, spread: 0");
  return changed(text, "wrap: 195", "wrap: " + wrap);
}

bool says(const Finding& finding, const std::string& words) { return finding.note.find(words) != std::string::npos; }

}  // namespace

TEST_CASE("seat: the cured demo's hooks stay on all the way, standing and lifted", "[hoist]") {
  const Seated demo(gallery_text("demo-cured"));
  CHECK(demo.findings().empty());
  REQUIRE(demo.seat.worst);
  CHECK(demo.seat.unjudged == 0);
  const Interval arc = demo.seat.hook.arc;
  CHECK(demo.seat.poses[*demo.seat.worst].arc_left(arc) > 60.0 * kDegree);
  for (const SeatWander& move : demo.seat.moves) CHECK((move.judged && move.held));
}

// A foot dragged under its hinge binds from some friction on; off the floor nothing can.
TEST_CASE("seat: where the dragged foot binds at the greatest friction, the poses are counted", "[hoist]") {
  const Seated rough(gallery_text("demo-cured"));
  int bound = 0;
  for (const SeatPose& pose : rough.seat.poses) {
    if (!pose.contact.binds) continue;
    ++bound;
    CHECK(rough.model.moves[pose.move].segments[pose.segment].kind == SegmentKind::drag);
  }
  CHECK(bound > 0);
  CHECK(rough.seat.binding == bound);
  const Seated smooth(changed(gallery_text("demo-cured"), "tolerances:", "friction: {floor: [0, 0.1]}\ntolerances:"));
  CHECK(smooth.seat.binding < bound);
}

TEST_CASE("seat: without a hoist the standing stair is judged and nothing else", "[hoist]") {
  const Seated ladder(gallery_text("rolling-ladder"));
  REQUIRE(ladder.seat.moves.size() == 1);
  CHECK(ladder.seat.moves[0].judged);
  CHECK(ladder.seat.standing);
  CHECK_FALSE(ladder.seat.parked);
  CHECK(ladder.findings().empty());
}

// The walk is coarse: what it says of a move must hold in between, to within the half degree that it adds.
TEST_CASE("seat: a walk in steps eighty times finer finds nothing outside what the coarse one says", "[hoist]") {
  SeatOptions fine;
  fine.step /= 80.0;
  for (const char* name : {"demo-cured", "costume-loft", "three-section"}) {
    const Seated coarse(gallery_text(name)), close(gallery_text(name), fine);
    REQUIRE(close.seat.poses.size() > 20 * coarse.seat.poses.size());
    for (std::size_t m = 0; m < coarse.seat.moves.size(); ++m) {
      INFO(name << ", move " << m);
      const SeatWander &said = coarse.seat.moves[m], &is = close.seat.moves[m];
      CHECK(said.held == is.held);
      CHECK(said.off_crown.lo <= is.off_crown.lo + 0.5 * kDegree);
      CHECK(said.off_crown.hi >= is.off_crown.hi - 0.5 * kDegree);
      CHECK(said.off_crown.length() <= is.off_crown.length() + 1e-9);
    }
  }
}

// Mixed signs of friction in hook, hinge and floor, as a stair at rest may have them, change little.
TEST_CASE("seat: whichever way friction acts in each joint, the force stays within what is said of the move",
          "[hoist]") {
  const Seated demo(gallery_text("demo-cured"));
  const LiftRig rig = lift_rig(demo.scene, demo.model, FrictionEnd::most, 0.005);
  int compared = 0;
  for (const SeatPose& pose : demo.seat.poses) {
    const Move& move = demo.model.moves[pose.move];
    if (stands_over_stations(move) || pose.v == 0.0 || pose.v == 1.0) continue;
    for (int signs = 0; signs < 4; ++signs) {
      LiftRig mixed = rig;
      mixed.friction.hook *= signs & 1 ? -1.0 : 1.0;
      mixed.friction.hinge *= signs & 2 ? -1.0 : 1.0;
      const Segment& segment = move.segments[pose.segment];
      const HookContact other =
          hauled_contact(mixed, {move, segment, place_on(segment, pose.v)}, demo.seat.cone, demo.seat.hook.arc);
      if (!other.judged) continue;
      ++compared;
      const Interval said = demo.seat.moves[pose.move].off_crown + (90.0 * kDegree - pose.pose.lean);
      CHECK(other.touches.lo >= std::min(said.lo, demo.seat.hook.arc.hi));
      CHECK(other.touches.hi <= said.hi);
    }
  }
  CHECK(compared > 100);
}

TEST_CASE("seat: a pick inside of the centre of mass turns the stair over, and a short curl lets it off", "[hoist]") {
  const Seated curled(low_pick("195"));
  CHECK(curled.findings().empty());  // the curl is under the pipe by then, and holds
  bool by_curl = false;
  for (const SeatWander& move : curled.seat.moves) by_curl = by_curl || (move.held && move.lifted);
  CHECK(by_curl);
  const Seated off(low_pick("130"));
  const std::vector<Finding> findings = off.findings();
  REQUIRE_FALSE(findings.empty());
  CHECK(findings[0].kind == FindingKind::seat);
  CHECK(says(findings[0], "turns over about its pick"));
  CHECK(findings[0].moves.size() > 1);
}

TEST_CASE("seat: a ceiling point near the wall draws the hooks off along their shanks", "[hoist]") {
  const Seated drawn(changed(gallery_text("demo-cured"), "ceiling point: {out: 2550", "ceiling point: {out: 1300"));
  const std::vector<Finding> findings = drawn.findings();
  REQUIRE(findings.size() == 1);
  CHECK(says(findings[0], "along their shanks"));
  CHECK(findings[0].move_kinds.back() == MoveKind::park);
  for (const SeatLoss& loss : drawn.seat.losses) CHECK(loss.hold);
}

TEST_CASE("seat: a contact near the curl's end is found, and where it ends to a millionth", "[hoist]") {
  const Seated shortish(changed(gallery_text("demo-cured"), "wrap: 195", "wrap: 110"));
  const std::vector<Finding> findings = shortish.findings();
  REQUIRE(findings.size() == 1);
  CHECK(says(findings[0], "of their 110° of arc"));
  CHECK(findings[0].move_kinds.front() == MoveKind::drag);
  REQUIRE_FALSE(shortish.seat.losses.empty());
  const SeatLoss& loss = shortish.seat.losses.front();
  const Interval arc = shortish.seat.hook.arc;
  CHECK(loss.from.arc_left(arc) < shortish.seat.near_end);
  CHECK(loss.to.arc_left(arc) == Approx(shortish.seat.near_end).margin(2e-6));  // 1e-6 rad of the drag, twice as fast
  CHECK(findings[0].clearance == Approx(0.024 * loss.worst.arc_left(arc)).margin(1e-12));
}

TEST_CASE("seat: lift needed and free are told for the standing and the level stair", "[hoist]") {
  const Seated demo(gallery_text("demo-cured"));
  REQUIRE(demo.seat.standing);
  REQUIRE(demo.seat.parked);
  // Standing at lean a, the curl's outer corner lies 36 mm sin(a + 195 degrees) under the hooks' centre, which lies
  // 7.3 mm under the pipe's: inside radius 24 mm and that much make the way.
  const SeatHold& standing = *demo.seat.standing;
  CHECK(standing.lift_needed == Approx(0.024 - 0.036 * std::sin(standing.pose.lean + 195.0 * kDegree)).margin(1e-12));
  CHECK_FALSE(standing.lift_stopped());
  CHECK(standing.lift.at_most > standing.lift_needed);
  CHECK(demo.seat.parked->slide_needed < demo.seat.parked->lift_needed);
}

// With the deck over the pipe low enough, the same stair cannot be lifted out: the loft is a real contact.
TEST_CASE("seat: a thing close above keeps the standing hooks on", "[hoist]") {
  const std::string text = changed(gallery_text("demo-cured"), "obstacles:",
                                   "obstacles:\n  - {name: cover board, box: {out: [900, 1300], up: [2950, 2970]}, "
                                   "stations: [0, 7600]}");
  const Seated covered(text);
  REQUIRE(covered.seat.standing);
  CHECK(covered.seat.standing->lift_stopped());
  CHECK(covered.seat.standing->lift.parts[1] == "cover board");
}
