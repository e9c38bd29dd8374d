#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "sim/hoist/seat_findings.h"
#include "sim/remedy/assess.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/random_scene.h"

using namespace stowpath;

// A wider range never makes an answer greener: clear, undecided, interference is the order of strictness.

namespace {

int strictness(FindingKind kind) { return kind == FindingKind::undecided ? 1 : 2; }

using ByMove = std::map<int, int>;  // strictness by the move's number, 0 where nothing is found

ByMove seat_of(const Scene& scene, const Model& model) {
  ByMove out;
  for (const Finding& finding : seat_findings(model, look_at_seat(scene, model)))
    for (const int move : finding.moves) out[move] = std::max(out[move], strictness(finding.kind));
  return out;
}

void check_no_greener(const ByMove& narrow, const ByMove& wide) {
  for (const auto& [move, strict] : narrow) {
    INFO("move " << move);
    const auto found = wide.find(move);
    CHECK((found != wide.end() && found->second >= strict));
  }
}

std::vector<Scene> scenes() {
  std::vector<Scene> out;
  for (const char* name : {"costume-loft", "crowded-workshop", "demo", "demo-cured", "three-section"})
    out.push_back(parse_scene(testing::rig_text(name), name));
  for (unsigned seed = 1; seed <= 8; ++seed) out.push_back(parse_scene(testing::random_scene(seed), "random.yaml"));
  return out;
}

/// Ranges one inside of the next.
std::vector<Interval> nested(double middle) {
  std::vector<Interval> out;
  for (const double share : {0.0, 0.02, 0.1, 0.3, 0.6, 0.9, 1.0})
    out.push_back({middle * (1.0 - share), middle * (1.0 + 2.0 * share)});
  return out;
}

template <class Set>
void widen(const Scene& base, double middle, Set set) {
  Scene scene = base;
  const Model model = build_model(base);
  ByMove narrow;
  for (const Interval range : nested(middle)) {
    INFO("range " << range.lo << " to " << range.hi);
    set(scene.friction, range);
    const ByMove wide = seat_of(scene, model);
    check_no_greener(narrow, wide);
    narrow = wide;
  }
}

}  // namespace

TEST_CASE("seat: a wider range of any friction never makes a move greener", "[hoist]") {
  for (const Scene& base : scenes()) {
    for (const double floor : {0.04, 0.1, 0.25, 0.5}) {
      INFO(base.name << ", about a floor friction of " << floor);
      Scene scene = base;
      scene.friction = {{0.3, 0.3}, {0.2, 0.2}, {floor, floor}};
      widen(scene, floor, [](Frictions& friction, Interval range) { friction.floor = range; });
      widen(scene, 0.2, [](Frictions& friction, Interval range) { friction.hook = range; });
      widen(scene, 0.3, [](Frictions& friction, Interval range) { friction.hinge = range; });
      widen(scene, floor, [](Frictions& friction, Interval range) { friction = {range, range, range}; });
    }
  }
}

// With a pick so near the pipe that the line has hardly a lever, the joints bind and not the foot.
TEST_CASE("seat: a wider range of friction never makes a stair greener whose line has little lever", "[hoist]") {
  const std::string text = testing::changed(testing::rig_text("demo-cured"), "along: 1700, across: 0, spread: 0",
                                            "along: 300, across: 0, spread: 0");
  for (const int out : {1000, 1100, 1300, 1800}) {
    INFO("ceiling point out " << out);
    Scene scene = parse_scene(text, "lever.yaml");
    scene.hoist->ceiling_point->at.x = 0.001 * out;
    scene.friction.floor = {0.02, 0.05};
    widen(scene, 0.2, [](Frictions& friction, Interval range) { friction.hook = range; });
    widen(scene, 0.05, [](Frictions& friction, Interval range) { friction.floor = range; });
  }
}

TEST_CASE("seat: a wider range of friction never makes the verdict greener", "[hoist]") {
  for (const char* name : {"costume-loft", "demo-cured", "three-section"}) {
    Scene scene = parse_scene(testing::rig_text(name), name);
    int narrow = 0;
    for (const Interval range : {Interval{0.05, 0.05}, {0.04, 0.08}, {0.03, 0.15}, {0.02, 0.4}, {0.01, 0.7}}) {
      INFO(name << ", floor friction up to " << range.hi);
      scene.friction.floor = range;
      const Verdict verdict = assess(scene).fit.verdict;
      const int wide = verdict == Verdict::clear ? 0 : verdict == Verdict::undecided ? 1 : 2;
      CHECK(wide >= narrow);
      narrow = wide;
    }
  }
}

TEST_CASE("seat: a wider seat range never makes the verdict greener", "[hoist]") {
  for (const char* name : {"costume-loft", "demo-cured", "three-section", "rolling-ladder"}) {
    Scene scene = parse_scene(testing::rig_text(name), name);
    scene.friction.floor = {0.02, 0.05};
    for (const double margin : {0.003, 0.0037, 0.0065}) {
      scene.margin.hook = margin;
      int narrow = 0;
      for (const double degrees : {0.0, 10.0, 30.0, 60.0, 90.0, 140.0, 180.0}) {
        INFO(name << ", hook margin " << margin << ", seat range " << degrees);
        scene.stair.hooks.seat_range = degrees * 0.017453292519943295;
        const Verdict verdict = assess(scene).fit.verdict;
        const int wide = verdict == Verdict::clear ? 0 : verdict == Verdict::undecided ? 1 : 2;
        CHECK(wide >= narrow);
        narrow = wide;
      }
    }
  }
}
