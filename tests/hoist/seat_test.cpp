#include "sim/hoist/seat.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <random>

#include "sim/hoist/seat_findings.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using testing::changed;
using testing::rig_text;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

constexpr Interval kEasy{0.02, 0.05};  // a floor on which the foot slides
constexpr Interval kRough{0.3, 0.7};   // one on which it binds

Scene on_floor(const std::string& text, Interval floor) {
  Scene scene = parse_scene(text, "seated.yaml");
  scene.friction.floor = floor;
  return scene;
}

struct Seated {
  Scene scene;
  Model model;
  SeatReport seat;

  explicit Seated(const std::string& text, Interval floor = kEasy, const SeatOptions& options = {})
      : scene(on_floor(text, floor)), model(build_model(scene)), seat(look_at_seat(scene, model, options)) {}

  std::vector<Finding> findings() const { return seat_findings(model, seat); }
};

std::string low_pick(const std::string& wrap) {
  std::string text =
      changed(rig_text("demo-cured"), "along: 1700, across: 0, spread: 0", "along: 700, across: 0, spread: 0");
  return changed(text, "wrap: 195", "wrap: " + wrap);
}

bool says(const Finding& finding, const std::string& words) { return finding.note.find(words) != std::string::npos; }

}  // namespace

TEST_CASE("seat: the cured demo's hooks stay on all the way, standing and lifted", "[hoist]") {
  const Seated demo(rig_text("demo-cured"));
  CHECK(demo.findings().empty());
  REQUIRE(demo.seat.worst);
  CHECK(demo.seat.unjudged == 0);
  const Interval arc = demo.seat.hook.arc;
  CHECK(demo.seat.poses[*demo.seat.worst].arc_left(arc) > 60.0 * kDegree);
  for (const SeatWander& move : demo.seat.moves) CHECK((move.judged && move.held));
}

// The line of the floor's force passes through the hinge: foot out from the hinge over the hinge's height.
TEST_CASE("seat: a dragged foot binds from the friction on at which the floor's force points at the hinge", "[hoist]") {
  const Seated rough(rig_text("demo-cured"), kRough);
  int bound = 0;
  for (const SeatPose& pose : rough.seat.poses) {
    if (!pose.contact.binds) continue;
    ++bound;
    const Segment& drag = rough.model.moves[pose.move].segments[pose.segment];
    REQUIRE(drag.kind == SegmentKind::drag);
    if (pose.contact.floor_known == kRough.hi) continue;  // the joints' own friction binds it
    const SectionPoses X_W = place_sections(rough.model.linkage, pose.pose);
    const Vec2 hinge = X_W[0] * rough.model.linkage.distal(0), axle = X_W[1] * drag.drag.axle;
    CHECK(pose.contact.floor_known == Approx((axle.x - hinge.x) / (hinge.y - rough.model.floor_level)).epsilon(1e-9));
  }
  CHECK(bound > 0);
  CHECK(rough.seat.binding == bound);
  CHECK(Seated(rig_text("demo-cured")).seat.binding == 0);
}

TEST_CASE("seat: what has no balance is undecided, by the friction from which on", "[hoist]") {
  const std::vector<Finding> findings = Seated(rig_text("demo-cured"), kRough).findings();
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].kind == FindingKind::seat);
  CHECK(says(findings[0], "the dragged foot props the stair up; they stay on up to a floor friction of 0.12"));
  CHECK(Seated(rig_text("demo-cured"), {0.02, 0.12}).findings().empty());
  CHECK_FALSE(Seated(rig_text("demo-cured"), {0.02, 0.13}).findings().empty());
  CHECK(findings[1].kind == FindingKind::undecided);
  CHECK(says(findings[1], "with a floor friction over 0.5"));
  CHECK(says(findings[1], "the scene's range goes to 0.70"));
  CHECK(findings[1].moves == std::vector<int>{4});
}

// As was found: with the foot binding from 0.62 on, the widest range was called clear and the narrower ones not.
TEST_CASE("seat: a wider friction of the floor does not make a fault go away", "[hoist]") {
  for (const double most : {0.4, 0.5, 0.6, 0.7}) {
    INFO("floor friction up to " << most);
    const std::vector<Finding> findings = Seated(rig_text("costume-loft"), {0.3, most}).findings();
    REQUIRE_FALSE(findings.empty());
    CHECK(findings[0].kind == FindingKind::seat);
    CHECK((findings.size() == 2) == (most > 0.55));
  }
}

// Before full stretch the lower section, whose centre of mass lies a little to the side, runs on by itself.
TEST_CASE("seat: with no friction at all the line does not hold the last of a drag, and that is undecided", "[hoist]") {
  const std::vector<Finding> findings = Seated(rig_text("demo-cured"), {0.0, 0.05}).findings();
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].kind == FindingKind::undecided);
  CHECK(says(findings[0], "moves by itself"));
  CHECK(findings[0].moves == std::vector<int>{5});
}

TEST_CASE("seat: a line from nowhere is undecided", "[hoist]") {
  Scene scene = on_floor(rig_text("demo-cured"), kEasy);
  scene.hoist->ceiling_point.reset();
  const Model model = build_model(scene);
  const std::vector<Finding> findings = seat_findings(model, look_at_seat(scene, model));
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].kind == FindingKind::undecided);
  CHECK(says(findings[0], "no `hoist.ceiling point`"));
  CHECK(findings[0].moves.size() == 5);
}

TEST_CASE("seat: without a hoist the standing stair is judged and nothing else", "[hoist]") {
  const Seated ladder(rig_text("rolling-ladder"));
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
    const Interval floor = std::string(name) == "demo-cured" ? kRough : kEasy;
    const Seated coarse(rig_text(name), floor), close(rig_text(name), floor, fine);
    REQUIRE(close.seat.poses.size() > 20 * coarse.seat.poses.size());
    for (std::size_t m = 0; m < coarse.seat.moves.size(); ++m) {
      INFO(name << ", move " << m);
      const SeatWander &said = coarse.seat.moves[m], &is = close.seat.moves[m];
      CHECK(said.held == is.held);
      CHECK(said.unknown == is.unknown);
      CHECK(said.off_crown.lo <= is.off_crown.lo + 0.5 * kDegree);
      CHECK(said.off_crown.hi >= is.off_crown.hi - 0.5 * kDegree);
      CHECK(said.off_crown.length() <= is.off_crown.length() + 1e-3);
    }
  }
}

// The statics of the pull, solved section by section, with every coefficient anywhere in its range, either way.
TEST_CASE("seat: whatever friction acts in each joint, the force points within what is said of the pose", "[hoist]") {
  std::mt19937 random(77);
  const auto share = [&] { return std::uniform_real_distribution(-1.0, 1.0)(random); };
  int compared = 0;
  for (const char* name : {"demo-cured", "costume-loft", "three-section"}) {
    const Seated stair(rig_text(name), kRough);
    const LiftRig rig = lift_rig(stair.scene, stair.model, FrictionEnd::most, 0.005);
    for (const SeatPose& pose : stair.seat.poses) {
      const Move& move = stair.model.moves[pose.move];
      if (stands_over_stations(move) || pose.v == 0.0 || pose.v == 1.0) continue;
      for (int draw = 0; draw < 20; ++draw) {
        LiftRig mixed = rig;
        mixed.friction = {share() * rig.friction.hook, share() * rig.friction.hinge, share() * rig.friction.floor};
        const Segment& segment = move.segments[pose.segment];
        const Reactions forces = pose_pull(mixed, {move, segment, place_on(segment, pose.v)}, Haul::raising).reactions;
        if (!forces.solvable || forces.tension[0] < 0.0 || norm(forces.hook) > 20.0 * 260.0) continue;
        ++compared;
        const double points = bend_angle(forces.hook, pose.pose.lean, stair.seat.hook.arc);
        const double off = std::remainder(points - pose.contact.points.middle(), 360.0 * kDegree);
        CHECK(std::abs(off) <= 0.5 * pose.contact.points.length() + 1e-3);
      }
    }
  }
  CHECK(compared > 2000);
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
  const Seated drawn(changed(rig_text("demo-cured"), "ceiling point: {out: 2550", "ceiling point: {out: 1300"));
  const std::vector<Finding> findings = drawn.findings();
  REQUIRE(findings.size() == 1);
  CHECK(says(findings[0], "along their shanks"));
  CHECK(findings[0].move_kinds.back() == MoveKind::park);
  for (const SeatLoss& loss : drawn.seat.losses) CHECK(loss.hold);
}

TEST_CASE("seat: a contact near the curl's end is found, and where it ends to a millionth", "[hoist]") {
  const Seated shortish(changed(rig_text("demo-cured"), "wrap: 195", "wrap: 110"));
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

// A beam over the level stair stops it from 74.6 degrees on, and no earlier: the worst pose, at 75, is held.
TEST_CASE("seat: a stop that holds the worst pose alone does not silence the rest of the stretch", "[hoist]") {
  std::string text = changed(rig_text("demo-cured"), "ceiling point: {out: 2550", "ceiling point: {out: 2100");
  text = changed(text, "obstacles:",
                 "obstacles:\n  - {name: board, box: {out: [905, 933], up: [2860, 2950]}, stations: [0, 7600]}\n"
                 "  - {name: beam, box: {out: [1500, 1600], up: [2865, 2960]}, stations: [0, 7600]}");
  for (const char* lean : {"hang: {lean: 70}", "hang: {lean: 75}"}) {
    INFO(lean);
    const Seated beamed(changed(text, "hang: {lean: 70}", lean));
    const std::vector<Finding> findings = beamed.findings();
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].kind == FindingKind::seat);
    CHECK(findings[0].moves.front() == 5);
    CHECK(findings[0].from.lean == Approx(55.8 * kDegree).margin(0.1 * kDegree));
    CHECK(findings[0].to.lean == Approx(74.6 * kDegree).margin(0.1 * kDegree));
  }
}

TEST_CASE("seat: lift needed and free are told for the standing and the level stair", "[hoist]") {
  const Seated demo(rig_text("demo-cured"));
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
  const std::string text = changed(rig_text("demo-cured"), "obstacles:",
                                   "obstacles:\n  - {name: cover board, box: {out: [900, 1300], up: [2950, 2970]}, "
                                   "stations: [0, 7600]}");
  const Seated covered(text);
  REQUIRE(covered.seat.standing);
  CHECK(covered.seat.standing->lift_stopped());
  CHECK(covered.seat.standing->lift.parts[1] == "cover board");
}
