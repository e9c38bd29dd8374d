#include "sim/mechanism/model.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>

#include "tests/support/sample_scene.h"

using namespace stowpath;
using stowpath::testing::sample_scene;

TEST_CASE("model: the sample stands where its numbers say", "[mechanism]") {
  const Model model = build_model(sample_scene());
  // Axle 3.290 m along on the datum line, 2.8967 - 0.0375 m below the pivot.
  CHECK(model.working_lean == Approx(std::acos(2.8592 / 3.290)).margin(1e-14));
  CHECK(model.hook_slack == Approx(0.0033).margin(1e-15));
  CHECK(model.home == 4.0);
  // Its first bracket stands half off the loft, and its caster plates are as long as what is left of the side rails.
  REQUIRE(model.faults.size() == 2);
  CHECK(model.faults[0].parts[0] == "bracket");
  CHECK(model.faults[1].parts[0] == "caster plate");
}

TEST_CASE("model: every part belongs to a section and has stations and a counter-clockwise outline", "[mechanism]") {
  const Model model = build_model(sample_scene());
  std::set<PartKind> kinds;
  for (const StairPart& part : model.stair) {
    kinds.insert(part.kind);
    CHECK(part.section >= 0);
    CHECK(part.section < model.linkage.sections);
    CHECK_FALSE(part.stations.empty());
    for (const Interval stretch : part.stations) CHECK(stretch.length() > 0.0);
    CHECK_NOTHROW(make_rounded_polygon(part.outline.core, part.outline.radius));
  }
  for (const PartKind kind :
       {PartKind::side_rail, PartKind::tread, PartKind::scab, PartKind::spacer_block, PartKind::lock_pin,
        PartKind::hinge, PartKind::hook, PartKind::caster, PartKind::caster_plate, PartKind::extra})
    CHECK(kinds.count(kind) == 1);
}

TEST_CASE("model: every room part has stations and a counter-clockwise outline", "[mechanism]") {
  const Model model = build_model(sample_scene());
  for (const RoomPart& part : model.room) {
    CHECK_FALSE(part.stations.empty());
    for (const Interval stretch : part.stations) CHECK(stretch.length() > 0.0);
    CHECK_NOTHROW(make_rounded_polygon(part.outline.core, part.outline.radius));
  }
}

TEST_CASE("model: a scene assembles to the same numbers every time", "[mechanism]") {
  const Model a = build_model(sample_scene()), b = build_model(sample_scene());
  REQUIRE(a.stair.size() == b.stair.size());
  for (std::size_t i = 0; i < a.stair.size(); ++i) CHECK(a.stair[i].outline.core == b.stair[i].outline.core);
  CHECK(a.moves.back().segments[0].to.folds == b.moves.back().segments[0].to.folds);
}

TEST_CASE("model: the stair's own parts are alike on its left and right", "[mechanism]") {
  const Model model = build_model(sample_scene());
  for (const StairPart& part : model.stair) {
    if (part.kind == PartKind::extra) continue;  // the gate hinge sits on one side
    for (const Interval stretch : part.stations) {
      const bool mirrored = std::any_of(part.stations.begin(), part.stations.end(), [&](Interval other) {
        return std::abs(other.lo + stretch.hi) < 1e-15 && std::abs(other.hi + stretch.lo) < 1e-15;
      });
      CHECK(mirrored);
    }
  }
}
