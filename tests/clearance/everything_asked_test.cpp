// Scenes that look clear to a proof that leaves something out: each case names a thing that exists, and asks for it.
#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "sim/clearance/dry_fit.h"
#include "sim/mechanism/standing.h"
#include "sim/remedy/assess.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

std::string cured() { return gallery_text("demo-cured"); }

std::string with_thing(std::string text, const std::string& thing) {
  return changed(std::move(text), "obstacles:\n", "obstacles:\n  - {name: thing, " + thing + "}\n");
}

Assessment assessed(const std::string& text) { return assess(parse_scene(text, "scene.yaml"), AssessOptions{}); }

/// Whether some finding names `part` and `thing`, whichever way round, of a kind that is proven.
const Finding* proven(const DryFit& fit, const std::string& part, const std::string& thing) {
  for (const Finding& f : fit.findings) {
    const bool named = (f.parts[0] == part && f.parts[1] == thing) || (f.parts[0] == thing && f.parts[1] == part);
    if (named && f.kind != FindingKind::undecided) return &f;
  }
  return nullptr;
}

void check_met(const std::string& text, const std::string& part, const std::string& thing) {
  const Assessment found = assessed(text);
  INFO(told(found.fit));
  CHECK(found.fit.verdict == Verdict::interference);
  CHECK(proven(found.fit, part, thing));
}

}  // namespace

TEST_CASE("asked: every run of the led-off line, from the ceiling point over each lead to the hand", "[clearance]") {
  check_met(with_thing(cured(), "box: {out: [3400, 3500], up: [3900, 4080]}, stations: [4000, 4350]"),
            "line to lead 1", "thing");
  check_met(with_thing(cured(), "box: {out: [4450, 4560], up: [4000, 4100]}, stations: [4900, 4980]"),
            "line to lead 2", "thing");
  check_met(with_thing(cured(), "box: {out: [4500, 4590], up: [1800, 2000]}, stations: [5560, 5640]"),
            "line to the hand", "thing");
  // Led off aslant, all of it counts, its first and last stretch as well as its middle.
  const std::string aslant = changed(cured(), "{out: 4550, up: 4060, station: 4170}, ", "{out: 4550, up: 4060, station: 4900}, ");
  for (const char* at : {"box: {out: [2780, 2860], up: [3900, 4078]}, stations: [4200, 4330]",
                         "box: {out: [3500, 3600], up: [3900, 4070]}, stations: [4480, 4580]",
                         "box: {out: [4250, 4330], up: [3900, 4062]}, stations: [4780, 4840]"}) {
    INFO(at);
    check_met(with_thing(aslant, at), "line to lead 1", "thing");
  }
}

TEST_CASE("asked: without a lead the fall hangs from the ceiling point, through the stair", "[clearance]") {
  const std::string plain = changed(cured(), "    leads: [{out: 4550, up: 4060, station: 4170}, {out: 4550, up: 4060, station: 5600}]\n", "");
  const Assessment found = assessed(plain);
  INFO(told(found.fit));
  CHECK(found.fit.verdict == Verdict::interference);
  CHECK(find(found.fit, FindingKind::interference, "tread", "line to the hand"));
}

TEST_CASE("asked: a thing beside the ceiling point keeps its margin to all of the line below it", "[clearance]") {
  for (const char* face : {"2400, 2533", "2400, 2537", "2400, 2545", "2400, 2549"}) {
    INFO(face);
    check_met(with_thing(cured(), "box: {out: [" + std::string(face) + "], up: [3300, 4100]}, stations: [3900, 4400]"),
              "hoist line", "thing");
  }
}

TEST_CASE("asked: a hinge is its own two sections' and no one else's", "[clearance]") {
  std::string text = gallery_text("three-section");
  text = changed(text, "{face: back, offset: 14, limit: 178}, {face: front, offset: 14, limit: 178}",
                 "{face: back, offset: 5, limit: 180}, {face: back, offset: 40, limit: 178}");
  text = text.substr(0, text.find("procedure:\n")) +
         "procedure:\n  - roll: home\n  - hook on: hoist\n  - unpin: 1\n  - drag: 40\n  - hang: 75\n"
         "  - fold: {hinge: 1, to: 180}\n";
  const DryFit fit = dry_fit_of(text);
  INFO(told(fit));
  CHECK(find(fit, FindingKind::interference, "hinge", "side rail"));
}

TEST_CASE("asked: the lines against the sections that they are tied to", "[clearance]") {
  // With one pick in the middle of the width the tackle lies on the treads' way.
  std::string middle = changed(cured(), "spread: 600}", "spread: 0}");
  middle = changed(middle, "  spreader: {length: 600, drop: 250, mass: 1.5 kg}\n", "");
  middle = changed(middle, "along: 1700", "along: 1500");
  check_met(middle, "hoist line", "tread");
  // A low handrail stands in the way of a line beside the stair.
  check_met(changed(changed(cured(), "handrails: none", "handrails: {height: 50, diameter: 34, sides: both, post every: 1200}"),
                    "spread: 600}   # eyes on the side rails' outer faces\n  spreader: {length: 600",
                    "spread: 522}\n  spreader: {length: 522"),
            "spreader leg", "handrail");
  // A fold line between the side rails lies in the treads.
  const std::string inside = changed(changed(changed(cured(), "along: 200, across: -100", "along: 200, across: -60"),
                                             "along: 1300, across: -100", "along: 1300, across: -60"),
                                     "station: 261", "station: 0");
  check_met(inside, "fold line", "tread");
}

TEST_CASE("asked: a foot on the floor goes out as the pivot's play lets the stair stand steeper or lower", "[clearance]") {
  const std::string ladder = gallery_text("rolling-ladder");
  const Scene scene = parse_scene(ladder, "scene.yaml");
  const Model model = build_model(scene);
  // The same foot on the same floor with the contact at the end of the seat range either way: straight geometry.
  const double slack = scene.stair.hooks.inside - 0.5 * scene.rail.pipe.diameter, range = scene.stair.hooks.seat_range;
  double farthest = 0.0;
  for (const double touch : {-range, range}) {
    const Vec2 pivot = model.linkage.pivot + slack * Vec2{std::sin(touch), 1.0 - std::cos(touch)};
    const double drop = pivot.y - 0.5 * scene.stair.casters.diameter - scene.floor.level;
    const double lean = lean_for(model.axle, drop);
    for (const StairPart& part : model.stair)
      for (const Vec2 v : part.outline.core)
        farthest = std::max(farthest, pivot.x + v.x * std::sin(lean) + v.y * std::cos(lean) + part.outline.radius);
  }
  const auto verdict = [&](double beyond) {
    const std::string face = std::to_string(1000.0 * (farthest + model.margin.standard + beyond));
    return dry_fit_of(with_thing(ladder, "box: {out: [" + face + ", 2900], up: [0, 200]}, stations: [3000, 3400]")).verdict;
  };
  CHECK(verdict(-5e-4) != Verdict::clear);
  CHECK(verdict(0.03) == Verdict::clear);
}

TEST_CASE("asked: a parked foot is not on the floor, however uneven that is", "[clearance]") {
  const std::string low = changed(changed(cured(), "uneven: 3", "uneven: 10"), "  - fold: 176\n  - lift: 88\n", "");
  // Hung at 70 degrees and let down again until the casters are a little under the floor.
  const Assessment raised = assessed(low);
  const double lean = raised.model.working_lean / kDegree - 0.2;
  std::string text = changed(low, "  - hang: {lean: 70}\n", "");
  text = changed(text, "  - unpin: 1\n  - drag: {lean: 40}\n", "  - lift: 60\n  - lift: " + std::to_string(lean) + "\n");
  const Assessment found = assessed(text);
  INFO(told(found.fit));
  const Finding* caster = proven(found.fit, "caster", "floor");
  REQUIRE(caster);
  CHECK(caster->move_kinds.back() == MoveKind::park);
}

TEST_CASE("asked: two blocks that come together", "[clearance]") {
  // The tackle is 1.0 m long in the parked pose; blocks of half that and more meet.
  const std::string line = "    diameter: 8\n    strength: 8 kN\n";
  const auto text = [&](int length) {
    return changed(cured(), line, line + "    blocks: {length: " + std::to_string(length) + ", width: 56}\n");
  };
  CHECK_FALSE(proven(assessed(text(200)).fit, "lower block", "upper block"));
  const Assessment found = assessed(text(560));
  INFO(told(found.fit));
  const Finding* met = proven(found.fit, "lower block", "upper block");
  REQUIRE(met);
  const Model& model = found.model;
  const SectionPoses X_W = place_sections(model.linkage, {4.17, 88.0 * kDegree, {176.0 * kDegree, 0.0}});
  const double apart = norm(X_W[0] * Vec2{1.7, 0.0} - Vec2{2.55, 4.08}) - 0.25 - 2.0 * 0.56;
  CHECK(met->clearance == Approx(apart).margin(1.1e-4));  // the least way is known to a tenth of a millimetre
}

TEST_CASE("asked: the line along its own run, and the fold line beside the hoist's", "[clearance]") {
  const std::string along = changed(cured(), "{out: 4550, up: 4060, station: 4170}, ", "{out: 2420, up: 3400, station: 4170}, ");
  check_met(along, "hoist line", "line to lead 1");
  for (const char* station : {"4200", "4150"}) {
    INFO(station);
    const Assessment found = assessed(changed(cured(), "{out: 4550, up: 4060, station: 4170}, ",
                                              "{out: 2420, up: 3400, station: " + std::string(station) + "}, "));
    INFO(told(found.fit));
    CHECK(found.fit.verdict == Verdict::interference);
    CHECK((proven(found.fit, "hoist line", "line to lead 1") ||
           find(found.fit, FindingKind::undecided, "hoist line", "line to lead 1")));
  }
  // One eye for both lines.
  const std::string together = changed(changed(cured(), "spread: 600}", "spread: 522}"), "along: 200, across: -100", "along: 1650, across: 40");
  const Assessment found = assessed(together);
  INFO(told(found.fit));
  CHECK(found.fit.verdict != Verdict::clear);
  CHECK((find(found.fit, FindingKind::interference, "spreader leg", "fold line") ||
         find(found.fit, FindingKind::margin, "spreader leg", "fold line") ||
         find(found.fit, FindingKind::undecided, "spreader leg", "fold line")));
}

TEST_CASE("asked: two picks without a bar are two lines, each proven to meet what it meets", "[clearance]") {
  std::string text = changed(gallery_text("demo"), "  spreader: {length: 600, drop: 250, mass: 1.5 kg}\n", "");
  check_met(text, "hoist line", "strip light");
}

TEST_CASE("asked: home is a stretch of stations", "[clearance]") {
  // A post beside the parked stair's scab, 17 mm off along the rail where the stair stands exactly at home: 7 mm of it are
  // left at the end of the stretch, and 12 are wanted.
  const std::string beside = "box: {out: [2550, 2600], up: [2600, 3300]}, stations: [4543, 4560]";
  const Assessment found = assessed(with_thing(cured(), beside));
  INFO(told(found.fit));
  CHECK(found.fit.verdict != Verdict::clear);
  const Assessment exact = assessed(with_thing(changed(cured(), "  home: 4170\n", "  home: 4170\n  home within: 0\n"), beside));
  INFO(told(exact.fit));
  CHECK(exact.fit.verdict == Verdict::clear);
}

TEST_CASE("asked: ends butted at a hinge have parted at a right angle, whichever way that is reached", "[clearance]") {
  // Scabs that lie against the side rails without a block, folded to exactly a right angle and on.
  for (const char* fold : {"  - fold: 90\n  - fold: 177\n", "  - fold: 89.999\n  - fold: 177\n", "  - fold: 177\n"}) {
    INFO(fold);
    const Assessment found = assessed(changed(gallery_text("costume-loft"), "  - fold: 177\n", fold));
    INFO(told(found.fit));
    CHECK(found.fit.verdict == Verdict::clear);
  }
}

TEST_CASE("asked: whoever pulls stands clear of the stair, and of where it falls", "[clearance]") {
  const std::string under = changed(cured(), "{out: 4550, up: 4060, station: 5600}", "{out: 4300, up: 4060, station: 4300}");
  const Assessment found = assessed(under);
  INFO(told(found.fit));
  CHECK(find(found.fit, FindingKind::zone, "falling stair", "where the hand pulls"));
}
