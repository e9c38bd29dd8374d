#include "sim/remedy/judge.h"

#include <catch2/catch.hpp>

using namespace stowpath;

namespace {

Finding meeting(const std::string& stair, const std::string& room, double clearance, std::vector<int> moves = {5}) {
  Finding f;
  f.parts = {stair, room};
  f.part_kinds = {PartKind::side_rail, PartKind::obstacle};
  f.kind = clearance < 0.0 ? FindingKind::interference : FindingKind::margin;
  f.clearance = clearance;
  f.needed = 0.012;
  f.things = 1;
  f.moves = std::move(moves);
  f.move_kinds.assign(f.moves.size(), MoveKind::lift);
  return f;
}

const Finding kLamp = meeting("side rail", "lamp", -0.030);
const Finding kDuct = meeting("side rail", "duct", 0.005);

}  // namespace

TEST_CASE("judge: a change is well if its target is gone and the rest is as it was", "[remedy]") {
  CHECK(judge({kLamp, kDuct}, {kDuct}, kLamp).well());
  CHECK(judge({kLamp}, {}, kLamp).well());
}

TEST_CASE("judge: what is left of the target says how much is lacking at least", "[remedy]") {
  const Judgement left = judge({kLamp}, {meeting("tread", "lamp", -0.010)}, kLamp);
  CHECK_FALSE(left.cured);
  CHECK(left.against.size() == 1);
  CHECK(left.lacking == Approx(0.022));
}

TEST_CASE("judge: a new finding is against it, of the same part or another", "[remedy]") {
  const Judgement fresh = judge({kLamp}, {kDuct}, kLamp);
  CHECK(fresh.cured);
  CHECK_FALSE(fresh.well());
  CHECK(fresh.lacking == Approx(0.007));
}

TEST_CASE("judge: an old finding may stay but not get worse, in depth, kind, moves or places", "[remedy]") {
  Finding now = kDuct;
  now.clearance = 0.0049;  // both are known to 0.1 mm
  CHECK(judge({kLamp, kDuct}, {now}, kLamp).well());
  now.clearance = 0.0048;
  CHECK_FALSE(judge({kLamp, kDuct}, {now}, kLamp).well());
  now = kDuct;
  now.moves = {5, 7};
  CHECK_FALSE(judge({kLamp, kDuct}, {now}, kLamp).well());
  now = kDuct;
  now.undecided_moves = {7};
  CHECK_FALSE(judge({kLamp, kDuct}, {now}, kLamp).well());
  now = kDuct;
  now.things = 2;
  CHECK_FALSE(judge({kLamp, kDuct}, {now}, kLamp).well());
  now = kDuct;
  now.kind = FindingKind::interference;
  CHECK_FALSE(judge({kLamp, kDuct}, {now}, kLamp).well());
}

TEST_CASE("judge: the body's parts are one matter, a zone and a thing of one name are not", "[remedy]") {
  CHECK(same_matter(kLamp, meeting("tread", "lamp", -0.01)));
  CHECK_FALSE(same_matter(kLamp, kDuct));
  Finding zone = kLamp;
  zone.part_kinds[1] = PartKind::zone;
  CHECK_FALSE(same_matter(kLamp, zone));
  Finding curl = kLamp, crown = kLamp;
  curl.parts[0] = "hook curl", crown.parts[0] = "hook crown";
  curl.part_kinds[0] = crown.part_kinds[0] = PartKind::hook;
  CHECK(same_matter(curl, crown));
  CHECK_FALSE(same_matter(curl, kLamp));
}
