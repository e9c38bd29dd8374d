#include <algorithm>
#include <catch2/catch.hpp>

#include "render/report/text.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;
using Catch::Contains;

namespace {

constexpr double kSame = 1e-9;  // [m]

const std::string kLastLift = "  - lift: 88\n";

bool inside(Interval outer, Interval inner) { return inner.lo >= outer.lo - kSame && inner.hi <= outer.hi + kSame; }

void check_stations(const std::string& scene) {
  const Model model = model_of(scene);
  const DryFit fit = dry_fit(model);
  REQUIRE_FALSE(fit.findings.empty());
  for (const Finding& f : fit.findings) {
    INFO(f.parts[0] << ", " << f.parts[1]);
    for (const Interval stretch : f.stations) CHECK(inside(model.span, stretch));
  }
}

}  // namespace

TEST_CASE("told places: no finding is told at stations where the stair cannot stand", "[dryfit]") {
  const std::string cured = gallery_text("demo-cured");
  // A shelf along the whole room in the way of the lift, and a floor without an end that the foot is pressed into.
  check_stations(changed(cured, "  - {name: casting bench,",
                         "  - {name: shelf, box: {out: [2300, 2700], up: [2600, 2700]}, stations: [0, 7600]}\n  - {name: casting bench,"));
  check_stations(changed(cured, "  - drag: {lean: 40}\n  - hang: {lean: 70}\n  - fold: 176\n", "  - fold: 176\n"));
}

// Once the line is off, the folded sections are as near to each other as they were in the move before.
TEST_CASE("told places: a stair parked off its line keeps the clearance of its sections", "[dryfit]") {
  const std::string cured = gallery_text("demo-cured");
  const DryFit on = dry_fit_of(cured), off = dry_fit_of(changed(cured, kLastLift, kLastLift + "  - hook off: hoist\n"));
  const MoveResult &before = result_of(on, MoveKind::park), &after = result_of(off, MoveKind::park);
  CHECK(before.at_least < 0.025);
  CHECK(after.at_least <= before.at_least + 1e-4);  // the proof's tolerance
}

TEST_CASE("told places: a led-off line meets a joist at the stations where both are", "[dryfit]") {
  const std::string aslant = changed(gallery_text("demo-cured"), "{out: 4550, up: 4060, station: 4170}, ",
                                     "{out: 4550, up: 4060, station: 4270}, ");
  const std::string scene =
      changed(aslant, "  - {name: casting bench,",
              "  - {name: joist, box: {out: [3400, 3500], up: [3900, 4060]}, stations: [4000, 4350]}\n"
              "  - {name: casting bench,");
  const Model model = model_of(scene);
  const DryFit fit = dry_fit(model);
  const auto met =
      std::find_if(fit.findings.begin(), fit.findings.end(), [](const Finding& f) { return f.parts[1] == "joist"; });
  REQUIRE(met != fit.findings.end());
  REQUIRE(met->moves.empty());
  REQUIRE(met->stations.size() == 1);
  CHECK(inside({4.16, 4.28}, met->stations.front()));
  CHECK(met->stations.front().contains(met->worst.station));
  const std::string text = dry_fit_text(model, fit, {});
  CHECK_THAT(text, Contains("worst at station 4.2") && !Contains("moves \n") && !Contains("moves\n"));
}
