#include "sim/mechanism/holding.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "sim/hoist/pull_pose.h"
#include "sim/mechanism/joint_hold.h"
#include "sim/mechanism/mass.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/loose_scenes.h"

using namespace stowpath;
using stowpath::testing::changed;
using stowpath::testing::loose_scene;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

std::vector<BuildFault> faults_of(const std::string& text) {
  const Scene scene = parse_scene(text, "test.yaml");
  return holding_faults(scene, build_model(scene));
}

/// The words of the first fault about a section or "stair"; "held" where there is none.
std::string told_of(const std::string& text, const std::string& subject) {
  for (const BuildFault& fault : faults_of(text))
    if (fault.parts.front() == subject) return fault.text;
  return "held";
}

std::string with_procedure(const std::string& name, const std::string& steps) {
  const std::string text = loose_scene(name);
  const std::size_t from = text.find("procedure:\n"), to = text.find("tolerances:");
  return text.substr(0, from) + "procedure:\n" + steps + (to == std::string::npos ? "" : text.substr(to));
}

const std::string kToPlumb = "  - roll: home\n  - hook on: hoist\n  - unpin: 1\n  - drag: 40\n  - hang: 70\n";

std::string without_fold_line(std::string text) {
  const std::size_t from = text.find("fold line:");
  return text.erase(from, text.find('\n', from) + 1 - from);
}

/// Potential energy of all sections, and the fold line's length: what the moments are the derivatives of.
double energy(const JointLoads& loads, const Configuration& at) {
  const SectionPoses X_W = place_sections(loads.linkage, at);
  double sum = 0.0;
  for (std::size_t j = 0; j < loads.masses.size(); ++j)
    sum += 9.80665 * loads.masses[j].mass * (X_W[j] * loads.masses[j].centre).y;
  return sum;
}

Vec2 place_of_end(const RopeEnd& end, const SectionPoses& X_W) {
  return end.section < 0 ? end.at : X_W[static_cast<std::size_t>(end.section)] * end.at;
}

double fold_line_length(const JointLoads& loads, const Configuration& at) {
  const SectionPoses X_W = place_sections(loads.linkage, at);
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < loads.fold_line.size(); ++i)
    sum += norm(place_of_end(loads.fold_line[i + 1], X_W) - place_of_end(loads.fold_line[i], X_W));
  return sum;
}

template <typename F>
double slope(F f, Configuration at, std::size_t k) {
  constexpr double kStep = 1e-5;
  Configuration more = at, less = at;
  more.folds[k] += kStep;
  less.folds[k] -= kStep;
  return (f(more) - f(less)) / (2.0 * kStep);
}

using Catch::Contains;

}  // namespace

TEST_CASE("joint balance: moments are the slopes of the potential energy and of the line's length",
          "[mechanism][held]") {
  const Scene scene = parse_scene(
      changed(
          loose_scene("three sections"), "procedure:\n",
          "fold line: {from: {section: 1, along: 300, across: -90}, through: [{section: 3, along: 900, across: 95}, "
          "{section: 2, along: 500, across: -100}], diameter: 8}\nprocedure:\n"),
      "test.yaml");
  const Model model = build_model(scene);
  const JointLoads loads = joint_loads(scene, model);
  for (const double lean : {0.5, 1.2, 1.57})
    for (const double first : {0.3, 1.6, 2.9})
      for (const double second : {0.1, 1.4, 3.0}) {
        const Configuration at{4.7, lean, {first, second}};
        for (std::size_t k = 0; k < 2; ++k) {
          const JointBalance balance = balance_of(loads, at, static_cast<int>(k), true);
          CHECK(balance.weight ==
                Approx(-slope([&](const Configuration& c) { return energy(loads, c); }, at, k)).margin(1e-5));
          CHECK(balance.fold_line ==
                Approx(-slope([&](const Configuration& c) { return fold_line_length(loads, c); }, at, k)).margin(1e-8));
        }
      }
}

TEST_CASE("joint balance: a line that picks below the joint adds its own pull", "[mechanism][held]") {
  const Scene scene = parse_scene(
      changed(loose_scene("folding"), "pick: {section: 1, along: 1700", "pick: {section: 2, along: 700"), "test.yaml");
  const Model model = build_model(scene);
  const JointLoads loads = joint_loads(scene, model);
  // Straight, the line holds both sections as one; the joint passes what is left of the lower one's moment.
  const Configuration at{4.17, 50.0 * kDegree, {0.0, 0.0}};
  const SectionPoses X_W = place_sections(model.linkage, at);
  const Vec2 pick = X_W[1] * Vec2{0.7, 0.0}, up = loads.ceiling_point->at, pivot = model.linkage.pivot;
  const Vec2 hinge = X_W[0] * model.linkage.distal(0), way = (1.0 / norm(up - pick)) * (up - pick);
  const Vec2 c0 = X_W[0] * model.masses[0].centre, c1 = X_W[1] * model.masses[1].centre;
  const double w0 = 9.80665 * model.masses[0].mass, w1 = 9.80665 * model.masses[1].mass;
  const double tension = (w0 * (c0.x - pivot.x) + w1 * (c1.x - pivot.x)) / cross(pick - pivot, way);
  const double opening = -w1 * (c1.x - hinge.x) + tension * cross(pick - hinge, way);  // counter-clockwise
  CHECK(balance_of(loads, at, 0, true).weight == Approx(-opening).epsilon(1e-9));
  CHECK(balance_of(loads, at, 0, false).weight == Approx(w1 * (c1.x - hinge.x)).epsilon(1e-9));
}

TEST_CASE("holding: the fold line is tight wherever the statics of the lift say so", "[mechanism][held]") {
  const Scene scene = parse_scene(loose_scene("folding"), "test.yaml");
  const Model model = build_model(scene);
  const LiftRig rig = lift_rig(scene, model, FrictionEnd::mean, 0.008);
  for (const Move& move : model.moves) {
    if (move.kind != MoveKind::fold && move.kind != MoveKind::lift) continue;
    for (const Segment& segment : move.segments)
      for (int i = 0; i <= 40; ++i) {
        const PosePull pull = pose_pull(rig, {move, segment, i / 40.0}, Haul::holding);
        const HeldPose pose{at(model.linkage, segment, i / 40.0), true, {false}, {true}};
        const bool held = joint_holds(joint_loads(scene, model), {scene, model}, pose)[0].hold == JointHold::held;
        CHECK(held);
        CHECK((pull.fold.has_value() || balance_of(joint_loads(scene, model), pose.at, 0, true).off_plumb < kDegree));
      }
  }
}

TEST_CASE("holding: a fold line holds the demo's section throughout, and what never leaves the floor needs none",
          "[mechanism][held]") {
  for (const char* name : {"folding", "ladder", "one piece in inches", "posts", "straps"})
    CHECK(faults_of(loose_scene(name)).empty());
  for (const char* name : {"demo", "demo-cured"}) CHECK(faults_of(testing::gallery_text(name)).empty());
}

TEST_CASE("holding: taking the line off a raised stair is found, and the step named", "[mechanism][held]") {
  const std::string off = with_procedure("folding", kToPlumb + "  - fold: 176\n  - lift: 88\n  - hook off: hoist\n");
  CHECK_THAT(told_of(off, "stair"), Contains("step 8 takes the hoist line off") && Contains("88.0"));
  const std::string between = with_procedure("folding", kToPlumb + "  - hook off: hoist\n  - fold: 176\n");
  CHECK_THAT(told_of(between, "stair"), Contains("step 6 takes the hoist line off"));
  const std::string again =
      with_procedure("folding", kToPlumb + "  - hook off: hoist\n  - hook on: hoist\n  - fold: 176\n");
  CHECK_THAT(told_of(again, "stair"), Contains("step 6 takes the hoist line off"));
  const std::string standing = with_procedure("folding", "  - roll: home\n  - hook on: hoist\n  - hook off: hoist\n");
  CHECK(told_of(standing, "stair") == "held");
}

TEST_CASE("holding: a one-piece stair in the air needs its line as well, in inches too", "[mechanism][held]") {
  const std::string hoist =
      "hoist:\n  ceiling point: {out: 8 ft, up: 14 ft 11 in, station: 12 ft}\n  home: 12 ft\n"
      "  pick: {section: 1, along: 10 ft, across: 0, spread: 22-1/2}\n  line: {parts: 4, diameter: 3/8}\n";
  const std::string raised =
      with_procedure("one piece in inches", "  - roll: home\n  - hook on: hoist\n  - lift: 60\n  - hook off: hoist\n");
  const std::string text = changed(raised, "procedure:\n", hoist + "procedure:\n");
  CHECK_THAT(told_of(text, "stair"), Contains("step 4 takes the hoist line off") && Contains("60.0"));
  CHECK(told_of(changed(text, "  - hook off: hoist\n", ""), "stair") == "held");
}

TEST_CASE("holding: a stair raised without any hoist is held by nothing", "[mechanism][held]") {
  CHECK_THAT(told_of(with_procedure("ladder", "  - lift: 80\n"), "stair"),
             Contains("in step 1 (lift)") && Contains("describe a `hoist`"));
}

TEST_CASE("holding: a stair that hangs plumb from the pipe needs no line", "[mechanism][held]") {
  const Scene scene =
      parse_scene(with_procedure("folding", "  - roll: home\n  - hook on: hoist\n  - lift: 45\n  - hook off: hoist\n"),
                  "test.yaml");
  Model model = build_model(scene);
  const Vec2 centre = chain_mass(model.linkage, model.masses, 0).centre;
  const double plumb = -std::atan2(centre.y, centre.x);
  for (const double off : {0.0, 0.5, 1.5}) {
    Model there = model;
    for (Move& move : there.moves)
      for (Segment& segment : move.segments)
        if (move.kind == MoveKind::lift || move.kind == MoveKind::park) segment.to.lean = plumb + off * kDegree;
    CHECK(holding_faults(scene, there).empty() == (off < 1.0));
  }
}

TEST_CASE("holding: a folded section without a fold line falls, and the moves after it are told too",
          "[mechanism][held]") {
  const std::string text = without_fold_line(loose_scene("folding"));
  const std::vector<BuildFault> faults = faults_of(text);
  REQUIRE(faults.size() == 1);
  CHECK_THAT(faults[0].text, Contains("step 6 folds hinge 1 to 176.0") && Contains("nothing holds section 2") &&
                                 Contains("give a `fold line` from section 1 to section 2"));
  const DryFit fit = testing::dry_fit_of(text);
  const Finding* found = testing::find(fit, FindingKind::build, "section 2", "hinge 1");
  REQUIRE(found);
  CHECK(found->moves == std::vector<int>{6, 7, 7});
  CHECK(found->move_kinds == std::vector<MoveKind>{MoveKind::fold, MoveKind::lift, MoveKind::park});
}

TEST_CASE("holding: hanging plumb is held by weight, and by a degree off it no longer is", "[mechanism][held]") {
  const std::string text = without_fold_line(loose_scene("folding"));
  const std::size_t from = text.find("  - fold: 176"), to = text.find("tolerances:");
  const std::string hung = text.substr(0, from) + text.substr(to);
  CHECK(told_of(hung, "section 2") == "held");
  const auto lifted = [&](const std::string& lean) {
    return changed(hung, "tolerances:", "  - lift: " + lean + "\ntolerances:");
  };
  CHECK(told_of(lifted("70.9"), "section 2") == "held");
  CHECK_THAT(told_of(lifted("71.2"), "section 2"), Contains("in step 6 (lift)"));
}

TEST_CASE("holding: a fold line that pulls past the hinge's other side holds nothing", "[mechanism][held]") {
  const std::string front =
      changed(loose_scene("folding"),
              "from: {section: 1, along: 200, across: -60}, through: [{section: 2, along: 1300, across: -60}]",
              "from: {section: 1, along: 1700, across: 60}, through: [{section: 1, along: 1750, across: 60}]");
  CHECK_THAT(told_of(front, "section 2"), Contains("give a `fold line`"));  // it runs over no hinge
  const std::string opening =
      changed(loose_scene("folding"), "through: [{section: 2, along: 1300, across: -60}]",
              "through: [{section: 1, along: 1780, across: 200}, {section: 2, along: 0, across: 300}]");
  CHECK_THAT(told_of(opening, "section 2"), Contains("does not close it"));
}

TEST_CASE("holding: butted ends hold a raised joint whose hinge is on top, not one whose hinge is below",
          "[mechanism][held]") {
  const std::string steps = "  - roll: home\n  - hook on: hoist\n  - lift: 70\n  - unpin: 1\n";
  const std::string back = without_fold_line(with_procedure("folding", steps));
  CHECK_THAT(told_of(back, "section 2"), Contains("in step 4 (unpin)") && Contains("swings it down towards plumb"));
  CHECK(told_of(changed(back, "face: back", "face: front"), "section 2") == "held");
}

TEST_CASE("holding: folded up onto the section above, a section lies by its weight; before that it falls",
          "[mechanism][held]") {
  // Hinge on the climber's face: at a lean of 88 degrees the lower section is folded up and over.
  const std::string text = without_fold_line(changed(
      with_procedure("folding", "  - roll: home\n  - hook on: hoist\n  - lift: 88\n  - unpin: 1\n  - fold: 178\n"),
      "face: back", "face: front"));
  const Scene scene = parse_scene(text, "test.yaml");
  const Model model = build_model(scene);
  const auto hold = [&](double fold) {
    const HeldPose pose{{4.17, 88.0 * kDegree, {fold * kDegree, 0.0}}, true, {false}, {}};
    return joint_holds(joint_loads(scene, model), {scene, model}, pose)[0].hold;
  };
  CHECK(hold(178.0) == JointHold::held);
  CHECK(hold(177.1) == JointHold::held);
  CHECK(hold(150.0) == JointHold::closes);
  CHECK(hold(45.0) == JointHold::opens);
  CHECK_THAT(told_of(text, "section 2"), Contains("step 5 folds hinge 1"));
}

TEST_CASE("holding: a line off a standing stair whose joint is unpinned lets it buckle", "[mechanism][held]") {
  const std::string text =
      with_procedure("folding", "  - roll: home\n  - hook on: hoist\n  - unpin: 1\n  - hook off: hoist\n");
  CHECK_THAT(told_of(text, "section 2"), Contains("in step 4 (hook off)") && Contains("stands unpinned"));
  CHECK(told_of(text, "stair") == "held");
}

TEST_CASE("holding: with three sections every joint is looked at by itself", "[mechanism][held]") {
  const std::string text = loose_scene("three sections");
  CHECK_THAT(told_of(text, "section 3"), Contains("step 7 folds hinge 2 to 176.0"));
  CHECK_THAT(told_of(text, "section 2"), Contains("at hinge 1"));
  // A line over hinge 2 alone holds section 3; section 2 still swings as its load shifts.
  const std::string line = changed(text, "procedure:\n",
                                   "fold line: {from: {section: 2, along: 300, across: 84}, through: [{section: 3, "
                                   "along: 1200, across: 84}], diameter: 8, station: 270}\nprocedure:\n");
  CHECK(told_of(line, "section 3") == "held");
  CHECK_THAT(told_of(line, "section 2"), Contains("at hinge 1"));
  // Left pinned, hinge 2 needs nothing.
  const std::string pinned = with_procedure(
      "three sections", "  - roll: home\n  - hook on: hoist\n  - unpin: 1\n  - drag: 40\n  - hang: 75\n");
  CHECK(faults_of(pinned).empty());
}

TEST_CASE("holding: one line holds two joints along the folds at which one tension does, and not beside them",
          "[mechanism][held]") {
  const std::string line =
      "fold line: {from: {section: 3, along: 1038, across: 84}, through: [{section: 2, along: 562, across: 84}, "
      "{section: 2, along: 562, across: -84}, {section: 1, along: 860, across: -84}], diameter: 8, station: 246}\n";
  const std::string last = "  - fold: {hinge: 1, to: 170}\n  - lift: 90\n";
  const std::string start = line + "procedure:\n" + kToPlumb + "  - unpin: 2\n";
  const std::string folds[] = {"80.6, 12",   "86.1, 24",   "94.3, 50",  "101.2, 80",
                               "105.3, 110", "104.2, 140", "98.5, 160", "89.3, 178"};
  std::string path;
  for (const std::string& both : folds) path += "  - together: {fold: [" + both + "]}\n";
  const auto text = [&](const std::string& steps) {
    return changed(changed(with_procedure("three sections", ""), "procedure:\n", start + steps + last), "hang: 70",
                   "hang: 75");
  };
  CHECK(faults_of(text(path)).empty());
  CHECK_FALSE(faults_of(text("  - fold: {hinge: 2, to: 178}\n")).empty());
  // Short of its limit the lower joint would need a tension of its own.
  CHECK_THAT(told_of(text(changed(path, "89.3, 178", "93, 172")), "section 3"),
             Contains("tight enough for the other joint"));
}

TEST_CASE("holding: neither margins nor tolerances hold anything", "[mechanism][held]") {
  Scene scene = parse_scene(loose_scene("three sections"), "test.yaml");
  const auto before = holding_faults(scene, build_model(scene));
  scene.margin = {0.1, 0.1, 0.1};
  scene.tolerance = 0.1;
  const auto after = holding_faults(scene, build_model(scene));
  REQUIRE(after.size() == before.size());
  for (std::size_t i = 0; i < after.size(); ++i) CHECK(after[i].text == before[i].text);
}
