#include "sim/clearance/dry_fit.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <random>

#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

bool in_move(const Finding& f, int index) { return std::find(f.moves.begin(), f.moves.end(), index) != f.moves.end(); }

}  // namespace

TEST_CASE("dry fit: the demo shows its three faults, and none of them while the stair stands", "[dryfit]") {
  const DryFit fit = dry_fit_of(gallery_text("demo"));
  INFO(told(fit));
  CHECK(fit.verdict == Verdict::interference);
  CHECK(result_of(fit, MoveKind::roll).verdict == Verdict::clear);
  // On an uneven floor the play of the drag may bring a side rail to the arm at home, no more is known.
  CHECK(find(fit, FindingKind::undecided, "side rail", "bracket arm"));

  const Finding* curl = find(fit, FindingKind::interference, "hook curl", "bracket arm");
  REQUIRE(curl);
  CHECK(curl->things == 1);  // of nine brackets only the one at the home station
  CHECK(curl->things_in_all == 9);
  CHECK(contains(curl->stations, 4.340));
  CHECK(curl->from.lean > 40.0 * kDegree);
  CHECK_FALSE(in_move(*curl, 1));

  const Finding* light = find(fit, FindingKind::interference, "side rail", "strip light");
  REQUIRE(light);
  CHECK(in_move(*light, 7));
  CHECK(find(fit, FindingKind::interference, "hoist line", "strip light"));

  const Finding* wall = find(fit, FindingKind::zone, "side rail", "photo wall");
  REQUIRE(wall);
  CHECK(wall->move_kinds == std::vector{MoveKind::park});
  CHECK(fit.findings.size() == 5);
}

TEST_CASE("dry fit: the demo's cured twin is proven clear over the whole span and every move", "[dryfit]") {
  const DryFit fit = dry_fit_of(gallery_text("demo-cured"));
  INFO(told(fit));
  CHECK(fit.verdict == Verdict::clear);
  for (const MoveResult& r : fit.moves) {
    CHECK(r.verdict == Verdict::clear);
    CHECK(r.at_least <= r.at_most);
    CHECK(r.at_most - r.at_least <= 1e-4 + 1e-9);  // the tolerance asked for, and rounding
  }
  REQUIRE(fit.reach.standing.size() == 1);
  CHECK(fit.reach.standing[0] == fit.reach.rail_span);
}

TEST_CASE("dry fit: every scene of the gallery gets the answer that its comment states", "[dryfit]") {
  for (const char* name : {"costume-loft", "rolling-ladder", "three-section", "post-rail", "strap-rail"}) {
    const DryFit fit = dry_fit_of(gallery_text(name));
    INFO(name << "\n" << told(fit));
    CHECK(fit.verdict == Verdict::clear);
  }
  const DryFit crowded = dry_fit_of(gallery_text("crowded-workshop"));
  INFO(told(crowded));
  CHECK(find(crowded, FindingKind::interference, "hoist line", "drying line"));
  CHECK(find(crowded, FindingKind::interference, "hanging hoist line", "drying line"));
  CHECK(crowded.findings.size() == 2);
}

// Common practice, no source: hooks that clear a 1 in pipe still fouled its brackets, spaced 3 ft, while rolling, and
// nipping off the curl cured it. The numbers are our own.
TEST_CASE("dry fit: a long curl fouls every bracket that a hook passes; a shorter one rolls the whole span",
          "[dryfit]") {
  const std::string text = gallery_text("long-curl");
  const Model model = model_of(text);
  const DryFit fit = dry_fit(model);
  INFO(told(fit));
  REQUIRE(fit.findings.size() == 1);
  const Finding& f = fit.findings[0];
  CHECK(f.kind == FindingKind::interference);
  CHECK(f.parts == std::array<std::string, 2>{"hook curl", "bracket arm"});

  // Which brackets either hook passes follows from stations alone.
  int passed = 0, in_all = 0;
  for (double bracket = 0.4572; bracket < 7.5; bracket += 0.9144, ++in_all) {
    const bool left = model.span.contains(bracket + 0.28575), right = model.span.contains(bracket - 0.28575);
    passed += left || right ? 1 : 0;
  }
  CHECK(f.things == passed);
  CHECK(f.things_in_all == in_all);

  const DryFit cured = dry_fit_of(changed(text, "wrap: 238", "wrap: 190"));
  INFO(told(cured));
  CHECK(cured.verdict == Verdict::clear);
}

TEST_CASE("dry fit: a hook that rides over a pipe coupling is found while rolling", "[dryfit]") {
  const std::string text =
      changed(gallery_text("rolling-ladder"), "diameter: 26.9, length: 80", "diameter: 34, length: 80");
  const DryFit fit = dry_fit_of(text);
  INFO(told(fit));
  const Finding* f = find(fit, FindingKind::interference, "hook crown", "pipe joint");
  if (!f) f = find(fit, FindingKind::interference, "hook curl", "pipe joint");
  REQUIRE(f);
  CHECK(f->stations.size() == 2);  // once for each hook
  CHECK(contains(f->stations, 2.600 - 0.204));
  CHECK(contains(f->stations, 2.600 + 0.204));
}

TEST_CASE("dry fit: a screw head that stands proud of a bracket's saddle is found", "[dryfit]") {
  const std::string text = changed(
      gallery_text("rolling-ladder"),
      "shape: wall-saddle, projection: 60, drop: 45, arm: 10, saddle: [30, 1.5], plate: [50, 70, 5]",
      "shape: outline, parts: [{name: strap, outline: [[-60, -14], [-12, -14], [-12, -20], [-60, -20]], width: 30}, "
      "{name: screw head, outline: [[-17, 2]], radius: 4, width: 8}]");
  const DryFit fit = dry_fit_of(text);
  INFO(told(fit));
  const bool found = find(fit, FindingKind::interference, "hook curl", "bracket screw head") ||
                     find(fit, FindingKind::interference, "hook crown", "bracket screw head");
  CHECK(found);
}

TEST_CASE("dry fit: a longer arc strikes the strap's tabs that a shorter one passes", "[dryfit]") {
  const DryFit fit = dry_fit_of(changed(gallery_text("strap-rail"), "    wrap: 130\n", "    wrap: 160\n"));
  INFO(told(fit));
  CHECK(find(fit, FindingKind::interference, "hook curl", "bracket tab"));
}

TEST_CASE("dry fit: a point that comes too near a saddle is found, where the same rod cut square passes", "[dryfit]") {
  const std::string text = changed(gallery_text("post-rail"), "wrap: 170", "wrap: 200");
  const DryFit pointed = dry_fit_of(text), square = dry_fit_of(changed(text, "end: pointed", "end: square"));
  INFO(told(pointed) << told(square));
  CHECK(find(pointed, FindingKind::margin, "hook curl", "bracket saddle"));
  CHECK(square.verdict == Verdict::clear);
}

TEST_CASE("dry fit: a foot that will not clear a bench while folding is found in the fold", "[dryfit]") {
  // The lower section swings from plumb under the upper: its foot passes out 1.4 m at about a metre's height.
  const std::string text =
      changed(gallery_text("demo-cured"), "casting bench, box: {out: [0, 620], up: [0, 900]}, stations: [300, 2300]",
              "casting bench, box: {out: [1500, 2100], up: [0, 1100]}, stations: [3600, 4900]");
  const DryFit fit = dry_fit_of(text);
  INFO(told(fit));
  bool in_fold = false;
  for (const Finding& f : fit.findings) in_fold = in_fold || (f.parts[1] == "casting bench" && in_move(f, 6));
  CHECK(in_fold);
}

TEST_CASE("dry fit: a fold that would press the foot through the floor is found", "[dryfit]") {
  // Folded where it stands, the lower section first swings down: the hinge is lower than the section is long.
  const std::string text = changed(gallery_text("demo-cured"),
                                   "  - drag: {lean: 40}\n  - hang: {lean: 70}\n  - fold: 176\n", "  - fold: 176\n");
  const DryFit fit = dry_fit_of(text);
  INFO(told(fit));
  const Finding* f = find(fit, FindingKind::interference, "caster", "floor");
  REQUIRE(f);
  CHECK(f->from.folds[0] < 5.0 * kDegree);  // at once, as mechanics has it: until plumb the foot goes down
}

TEST_CASE("dry fit: the line that crosses a lamp is found, and the one that passes it is not", "[dryfit]") {
  const DryFit demo = dry_fit_of(gallery_text("demo"));
  CHECK(find(demo, FindingKind::interference, "hoist line", "strip light"));
  const DryFit cured = dry_fit_of(gallery_text("demo-cured"));
  CHECK_FALSE(find(cured, FindingKind::interference, "hoist line", "strip light"));
}

TEST_CASE("dry fit: a pack that hangs into a walker's head is found by a zone", "[dryfit]") {
  const std::string text = changed(gallery_text("costume-loft"), "up: [0, 7 ft]}, stations: [2 ft, 20 ft]}",
                                   "up: [0, 8 ft 4 in]}, stations: [2 ft, 20 ft]}");
  const DryFit fit = dry_fit_of(text);
  INFO(told(fit));
  CHECK(find(fit, FindingKind::zone, "side rail", "head room at the mirrors"));
}

TEST_CASE("dry fit: margins are kept apart, and a lack of margin is no interference", "[dryfit]") {
  const DryFit fit = dry_fit_of(
      changed(gallery_text("demo-cured"), "margin: {default: 12, hook: 3", "margin: {default: 12, hook: 20"));
  INFO(told(fit));
  REQUIRE_FALSE(fit.findings.empty());
  for (const Finding& f : fit.findings) {
    CHECK(f.kind != FindingKind::interference);
    CHECK(f.needed == 0.020);
    CHECK(f.clearance > 0.0);
  }
}

TEST_CASE("dry fit: an obstacle more leaves no more stations, and a larger margin no more still", "[dryfit]") {
  const std::string text = gallery_text("rolling-ladder");
  const double free = total_length(dry_fit_of(text).reach.standing);
  const std::string crate =
      changed(text, "obstacles:\n",
              "obstacles:\n  - {name: crate, box: {out: [900, 1500], up: [0, 400]}, stations: [1000, 1300]}\n");
  const DryFit less = dry_fit_of(crate);
  INFO(told(less));
  const double with_crate = total_length(less.reach.standing);
  CHECK(with_crate < free);
  CHECK(less.verdict == Verdict::interference);
  const double wider =
      total_length(dry_fit_of(changed(crate, "margin: {default: 10", "margin: {default: 10.3")).reach.standing);
  CHECK(wider < with_crate);
}

TEST_CASE("dry fit: the order of obstacles changes nothing", "[dryfit]") {
  const std::string text = gallery_text("demo");
  const std::size_t bench = text.find("  - {name: casting bench"), rack = text.find("  - {name: drying rack"),
                    end = text.find("floor:");
  const std::string swapped =
      text.substr(0, bench) + text.substr(rack, end - rack) + text.substr(bench, rack - bench) + text.substr(end);
  const DryFit a = dry_fit_of(text), b = dry_fit_of(swapped);
  REQUIRE(a.findings.size() == b.findings.size());
  for (std::size_t i = 0; i < a.findings.size(); ++i) {
    CHECK(a.findings[i].parts == b.findings[i].parts);
    CHECK(a.findings[i].clearance == b.findings[i].clearance);
    CHECK(a.findings[i].stations == b.findings[i].stations);
  }
}

TEST_CASE("dry fit: stations left standing were proven: random ones keep the margin in every part", "[dryfit]") {
  const Model model = model_of(gallery_text("long-curl"));
  const DryFit fit = dry_fit(model);
  std::mt19937 random(20261125);
  std::uniform_real_distribution<double> any(model.span.lo, model.span.hi);
  int standing = 0;
  for (int n = 0; n < 2000; ++n) {
    const double s = any(random);
    const bool free = contains(fit.reach.standing, s);
    standing += free ? 1 : 0;
    // The only finding is the curl at the brackets' arms: closed form in the stations alone, given its side view.
    if (free) CHECK_FALSE(contains(fit.findings[0].stations, s));
  }
  CHECK(standing > 600);
  CHECK(standing < 2000);
}

TEST_CASE("dry fit: a pin pulled before the line is on is a fault of its own", "[dryfit]") {
  const DryFit fit = dry_fit_of(
      changed(gallery_text("demo-cured"), "  - hook on: hoist\n  - unpin: 1\n", "  - unpin: 1\n  - hook on: hoist\n"));
  INFO(told(fit));
  REQUIRE(fit.findings.size() == 1);
  CHECK(fit.findings[0].kind == FindingKind::build);
  CHECK(fit.verdict == Verdict::interference);
}
