#include "render/report/words.h"

#include <catch2/catch.hpp>

#include "tests/support/sample_dry_fit.h"

using namespace stowpath;
using Catch::Contains;

namespace {

constexpr DisplayUnits kMetric = DisplayUnits::metric, kImperial = DisplayUnits::imperial;

Finding margin_finding(double clearance) {
  Finding f = testing::hook_finding(1, 1);
  f.kind = FindingKind::margin;
  f.parts = {"side rail", "loft"};
  f.move_kinds = {MoveKind::lift};
  f.clearance = clearance;
  f.needed = 0.012;
  return f;
}

}  // namespace

TEST_CASE("words: a finding says all, both, some or just the one of like things", "[report]") {
  CHECK(finding_sentence(testing::hook_finding(8, 8), kMetric) ==
        "hook curl meets bracket arm at all 8 brackets while rolling, 9.0 mm deep");
  CHECK(finding_sentence(testing::hook_finding(2, 2), kMetric) ==
        "hook curl meets bracket arm at both brackets while rolling, 9.0 mm deep");
  CHECK(finding_sentence(testing::hook_finding(3, 8), kMetric) ==
        "hook curl meets bracket arm at 3 of 8 brackets while rolling, 9.0 mm deep");
  CHECK(finding_sentence(testing::hook_finding(1, 1), kImperial) ==
        "hook curl meets bracket arm while rolling, 3/8\" deep");
}

TEST_CASE("words: what lacks margin says how near it comes and what is wanted", "[report]") {
  CHECK(finding_sentence(margin_finding(0.0041), kMetric) ==
        "side rail comes within 4.1 mm of loft while lifting; 12 mm wanted");
  CHECK(finding_sentence(margin_finding(0.0041), kImperial) ==
        "side rail comes within 1/8\" of loft while lifting; 1/2\" wanted");
  CHECK(finding_sentence(margin_finding(0.0), kMetric) == "side rail touches loft while lifting; 12 mm wanted");
}

// A clearance of 16.87 mm is not 17 mm, one of 9.17 mm not 3/8 in (9.525 mm), and 16.2 mm in wood not 16.
TEST_CASE("words: clearances are told down, depths up", "[report]") {
  CHECK_THAT(finding_sentence(margin_finding(0.01687), kMetric), Contains("within 16 mm of"));
  CHECK_THAT(finding_sentence(margin_finding(0.00917), kImperial), Contains("within 5/16\" of"));
  Finding f = testing::hook_finding(1, 1);
  f.clearance = -0.0162;
  CHECK_THAT(finding_sentence(f, kMetric), Contains("17 mm deep"));
  CHECK_THAT(finding_sentence(f, kImperial), Contains("11/16\" deep"));
}

TEST_CASE("words: a zone is hung into, or stood in", "[report]") {
  Finding f = testing::hook_finding(1, 1);
  f.kind = FindingKind::zone;
  f.parts = {"tread", "photo wall"};
  f.clearance = -0.212;
  f.move_kinds = {MoveKind::park};
  CHECK(finding_sentence(f, kMetric) == "tread hangs into photo wall by 212 mm when parked");
  f.move_kinds = {MoveKind::stand};
  CHECK(finding_sentence(f, kMetric) == "tread stands in photo wall by 212 mm when standing");
}

TEST_CASE("words: what is undecided says why, and a building rule speaks for itself", "[report]") {
  Finding f = margin_finding(0.011);
  f.kind = FindingKind::undecided;
  f.note = "the proof ran out";
  CHECK(finding_sentence(f, kMetric) == "side rail and loft not proven clear while lifting: the proof ran out");
  f.kind = FindingKind::build;
  f.note = "a tread would cross the joint";
  CHECK(finding_sentence(f, kMetric) == "a tread would cross the joint");
}

TEST_CASE("words: moves are named while they are few, then numbered in runs", "[report]") {
  Finding f = testing::hook_finding(1, 1);
  f.moves = {1, 4, 5, 6, 7};
  f.move_kinds = {MoveKind::roll, MoveKind::drag, MoveKind::hang, MoveKind::fold, MoveKind::park};
  CHECK(when_text(f) == "in moves 1 and 4 to 6 and when parked");
  CHECK(moves_text(f.moves, f.move_kinds) == "1 roll, 4 drag, 5 hang, 6 fold, parked");
  f.moves = {6, 7, 7};
  f.move_kinds = {MoveKind::fold, MoveKind::lift, MoveKind::park};
  CHECK(when_text(f) == "while folding and lifting and when parked");
}

TEST_CASE("words: the verdict comes first, with counts that agree in number", "[report]") {
  const Model model = testing::dry_fit_model();
  DryFit fit = testing::sample_dry_fit();
  CHECK(verdict_line(model, fit) ==
        "INTERFERENCE: 5 findings (1 meets, 1 too close, 1 in a keep-clear zone, 1 undecided, 1 against a building "
        "rule). Wheel loft over the truing benches");
  fit.findings.resize(1);
  CHECK_THAT(verdict_line(model, fit), Contains("INTERFERENCE: 1 finding. Wheel loft"));
  fit.findings.push_back(testing::hook_finding(2, 8));
  fit.findings.push_back(margin_finding(0.0041));
  CHECK_THAT(verdict_line(model, fit), Contains("3 findings (2 meet, 1 too close)."));
  CHECK_THAT(verdict_line(model, testing::clear_dry_fit()), Contains("CLEAR: no findings in 7 moves and states."));
}

TEST_CASE("words: poses and stretches show a range only where there is one", "[report]") {
  Linkage linkage;
  linkage.sections = 2;
  Configuration a, b;
  a.lean = 0.5;
  b.lean = 1.0;
  CHECK(poses_text(linkage, a, b) == "lean 28.6° to 57.3°, fold 0.0°");
  a.lean = 0.5006;  // 28.682°
  CHECK(poses_text(linkage, a, b) == "lean 28.6° to 57.3°, fold 0.0°");
  CHECK(poses_text(linkage, b, a) == "lean 57.3° to 28.6°, fold 0.0°");
  CHECK(pose_text(linkage, a) == "lean 28.7°, fold 0.0°");
  a.lean = 0.5;
  linkage.sections = 1;
  CHECK(pose_text(linkage, a) == "lean 28.6°");
  linkage.sections = 3;
  CHECK(pose_text(linkage, a) == "lean 28.6°, fold 1: 0.0°, fold 2: 0.0°");
  CHECK(stretches_around({{4.0, 4.0}, {5.0, 6.5}}, kMetric) == "4.000 m, 5.000 m to 6.500 m");
  CHECK(stretches_around({{4.0004, 5.0006}}, kMetric) == "4.000 m to 5.001 m");
  CHECK(stretches_within({{4.0004, 5.0006}}, kMetric) == "4.001 m to 5.000 m");
  CHECK(stretches_within({{4.0004, 4.0006}, {5.0, 6.0}}, kMetric) == "5.000 m to 6.000 m");  // no mark of a tape in it
  CHECK(stretches_within({{0, 1}, {2, 3}, {4, 5}}, kMetric, 1) == "0.000 m to 1.000 m and 2 more");
}

TEST_CASE("words: the share of the loft served is never rounded up", "[report]") {
  const Reach almost{{0.0, 7.0}, {0.0, 7.0}, {{0.001, 7.0}}};
  CHECK_THAT(reach_sentence(almost, kMetric), Contains("(99 %)"));
  const Reach by_tenths{{0.0, 7.0}, {0.0, 7.0}, {{0.0004, 6.9996}}};
  CHECK_THAT(reach_sentence(by_tenths, kMetric),
             Contains("over 6.999 m of the loft's 7.000 m (99 %): 0.001 m to 6.999 m."));
  const Reach all{{1.0, 7.0}, {0.0, 8.0}, {{0.0, 8.0}}};
  CHECK_THAT(reach_sentence(all, kMetric), Contains("6.000 m of the loft's 6.000 m (100 %): 1.000 m to 7.000 m."));
  const Reach none{{1.0, 7.0}, {0.0, 8.0}, {}};
  CHECK(reach_sentence(none, kMetric) == "The stair is nowhere proven to stand clear along the loft's 6.000 m.");
}
