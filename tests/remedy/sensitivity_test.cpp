#include "sim/remedy/sensitivity.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <random>

#include "sim/clearance/trial.h"
#include "sim/remedy/assess.h"
#include "sim/remedy/measurement.h"
#include "sim/scene/key_table.h"
#include "sim/scene/reader.h"
#include "sim/scene/scene_error.h"
#include "tests/support/gallery.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

struct Case {
  Scene scene;
  Assessment found;
  std::vector<TightPlace> tight;
};

Case study(const Scene& scene) {
  Case out{scene, assess(scene), {}};
  out.tight = tight_places(out.scene, out.found.model, out.found.fit);
  return out;
}

Case study(const std::string& text) { return study(parse_scene(text, "scene.yaml")); }

const TightPlace& place_of_finding(const Case& c, const std::string& id) {
  for (const TightPlace& place : c.tight) {
    if (std::count(place.findings.begin(), place.findings.end(), id) > 0) return place;
  }
  throw std::logic_error("no place of finding " + id);
}

/// The tightest place between two parts.
const TightPlace& place_between(const Case& c, const std::string& stair, const std::string& other) {
  const TightPlace* found = nullptr;
  for (const TightPlace& place : c.tight) {
    if (place.parts[0] != stair || place.parts[1] != other) continue;
    if (found == nullptr || place.clearance < found->clearance) found = &place;
  }
  return found != nullptr ? *found : throw std::logic_error("no place between " + stair + " and " + other);
}

double rate(const TightPlace& place, const std::string& key) {
  for (const Sensitivity& by : place.by) {
    if (by.key == key) return by.smooth() ? by.rate() : throw std::logic_error(key + " has a kink");
  }
  return 0.0;
}

/// A second opinion: the least clearance of a move as the whole proof finds it, to 2 micrometres.
double proven_least(const Scene& scene, int move) {
  DryFitOptions options;
  options.tolerance = 2e-6;
  const Model model = build_model(scene);
  return Trial(model, options).run(move).result.at_most;
}

/// The same with one measurement larger by `by`; a thing's measurement shifts it within the scene.
double least_with(const Scene& scene, const std::string& key, double by, int move) {
  Scene changed = scene;
  for (const Measurement& m : measurements(scene)) {
    if (m.key == key) m.shift(changed, by);
  }
  for (int i = 0; i < static_cast<int>(scene.obstacles.size()); ++i) {
    for (const ThingMeasurement& m : obstacle_measurements(scene, i)) {
      if (m.key == key) m.shift(changed.obstacles[static_cast<std::size_t>(i)], by);
    }
  }
  return proven_least(changed, move);
}

/// Lumber sizes share a key: thickness and width are told apart by their words alone.
bool one_of_two(const std::string& key) { return key.ends_with(".lumber") || key.ends_with(".scab"); }

struct Tally {
  int compared = 0;
  int kinks = 0;  // told as such
  int turns = 0;  // met within the step
};

/// Compares the strongest measurements of each move's closest pair with full proofs on either side.
void compare(const Case& c, std::size_t most, Tally& tally) {
  constexpr double kStep = 4e-4;  // the proofs' error is half a per cent of it
  for (const TightPlace& place : c.tight) {
    if (place.moves.empty()) continue;
    std::size_t left = most;
    for (const Sensitivity& by : place.by) {
      if (one_of_two(by.key) || left == 0) continue;
      --left;
      if (!by.smooth()) {
        ++tally.kinks;
        continue;
      }
      const int move = place.moves.front();
      const double more = (least_with(c.scene, by.key, kStep, move) - place.clearance) / kStep;
      const double less = (place.clearance - least_with(c.scene, by.key, -kStep, move)) / kStep;
      INFO(c.scene.name << ", move " << move << ", " << place.parts[0] << " / " << place.parts[1] << ", " << by.key
                        << ": " << more << " more, " << less << " less, told " << by.rate());
      // Within the step another pair, corner or pose may take over; then one side still has to agree.
      const double off =
          std::min({std::abs(0.5 * (more + less) - by.rate()), std::abs(more - by.rate()), std::abs(less - by.rate())});
      CHECK(off < 0.01 + 0.01 * std::abs(by.rate()));
      if (std::abs(more - less) > 0.05) ++tally.turns;
      ++tally.compared;
    }
  }
}

}  // namespace

TEST_CASE("sensitivity: a light over the parked stair moves its clearance by the cosine of the slope", "[remedy]") {
  // The side rail lies under the light's bottom corner, square to the rail: lean 84 degrees.
  const Case c = study(testing::gallery_text("demo"));
  const TightPlace& place = place_of_finding(c, "F2");
  REQUIRE(place.parts == std::array<std::string, 2>{"side rail", "strip light"});
  const double cosine = std::sin(84.0 * kDegree), sine = std::cos(84.0 * kDegree);
  CHECK(rate(place, "obstacles[0].box.up[0]") == Approx(cosine).margin(1e-6));
  CHECK(rate(place, "rail.at.up") == Approx(-cosine).margin(1e-6));
  CHECK(rate(place, "rail.at.out") == Approx(-sine).margin(1e-6));
  CHECK(rate(place, "stair.side rails.front face") == Approx(-1.0).margin(1e-6));
  // The hook hangs lower by half of what the pipe grows, and the pivot with it.
  CHECK(rate(place, "rail.pipe") == Approx(-0.5 * cosine).margin(1e-6));
  // Where the other box side or the floor is does not matter.
  CHECK(rate(place, "obstacles[0].box.up[1]") == 0.0);
  CHECK(rate(place, "floor.level") == 0.0);
}

TEST_CASE("sensitivity: a zone's top under a level corner counts in full", "[remedy]") {
  const Case c = study(testing::gallery_text("demo"));
  const TightPlace& place = place_of_finding(c, "F4");
  CHECK(rate(place, "keep clear[0].box.up[1]") == Approx(-1.0).margin(1e-6));
  CHECK(rate(place, "rail.at.up") == Approx(1.0).margin(1e-6));
  // A back hinge further off its face lowers the pack by twice that, less the lean's slope and the fold's (176
  // degrees).
  const double folded = 84.0 * kDegree - 176.0 * kDegree;
  const double expected = -(std::sin(84.0 * kDegree) - std::sin(folded));
  CHECK(rate(place, "stair.hinges[0].offset") == Approx(expected).margin(1e-6));
}

TEST_CASE("sensitivity: a hook's end moves by its outer radius for each radian of wrap", "[remedy]") {
  const Case c = study(testing::gallery_text("long-curl"));
  const Finding& finding = c.found.fit.findings.at(0);
  const TightPlace& place = place_of_finding(c, finding.id);
  const Hooks& hooks = c.scene.stair.hooks;
  // What touches the arm lies on the curl's end and goes round the pivot with it, onward as the wrap grows.
  const Pose2 X_W = place_sections(c.found.model.linkage, place.at)[0];
  const Vec2 onward = X_W.turn({-std::cos(hooks.wrap), -std::sin(hooks.wrap)});
  const Vec2 arm = finding.witness.on_a - c.found.model.linkage.pivot;
  const Vec2 round{-arm.y, arm.x};
  const Vec2 apart = finding.witness.on_a - finding.witness.on_b;  // overlapping: the way that frees it is the other
  const double expected = -dot(apart, round) / norm(apart) * (dot(round, onward) > 0.0 ? 1.0 : -1.0);
  CHECK(norm(arm) > hooks.inside - 1e-4);
  CHECK(norm(arm) < hooks.inside + hooks.rod + 1e-4);
  CHECK(rate(place, "stair.hooks.wrap") == Approx(expected).epsilon(1e-3));
  CHECK(rate(place, "rail.brackets.arm") == Approx(-0.5).margin(1e-6));
}

TEST_CASE("sensitivity: a fold line beside a hinge's barrel, straight joints", "[remedy]") {
  const Case c = study(testing::gallery_text("demo-cured"));
  const TightPlace& place = place_between(c, "fold line", "hinge");
  // The line runs 100 mm behind the datum line, the axis 12 mm off a 5 1/2 in board's back face; radii 4 and 8 mm.
  CHECK(place.clearance == Approx(0.100 - (0.1397 - 0.070 + 0.012) - 0.004 - 0.008).margin(1e-7));
  CHECK(rate(place, "stair.hinges[0].offset") == Approx(-1.0).margin(1e-6));
  CHECK(rate(place, "fold line.diameter") == Approx(-0.5).margin(1e-6));
  CHECK(rate(place, "stair.side rails.front face") == Approx(1.0).margin(1e-6));
  CHECK(rate(place, "procedure[5].fold") == 0.0);
}

TEST_CASE("sensitivity: where two pairs tie, each way of a measurement is told by the pair that it brings closer",
          "[remedy]") {
  // Two equal posts, one on either side of the parked stair's scabs and as far off.
  std::string text = testing::gallery_text("demo-cured");
  const std::string post = "box: {out: [2550, 2600], up: [2600, 3300]}, stations: ";
  text = testing::changed(text, "obstacles:\n", "obstacles:\n  - {name: left post, " + post + "[3700, 3786]}\n  - {name: right post, " +
                                                    post + "[4554, 4700]}\n");
  const Case c = study(text);
  const auto at_post = std::find_if(c.tight.begin(), c.tight.end(), [](const TightPlace& p) { return p.parts[1].ends_with("post"); });
  REQUIRE(at_post != c.tight.end());
  // One post moved away leaves the other as near as it was.
  const auto own = std::find_if(at_post->by.begin(), at_post->by.end(), [](const Sensitivity& by) {
    return by.key.starts_with("obstacles[") && by.key.find("stations") != std::string::npos && !by.smooth();
  });
  REQUIRE(own != at_post->by.end());
  CHECK(std::abs(own->more + own->less) == Approx(1.0).margin(1e-6));
  CHECK(own->more * own->less == Approx(0.0).margin(1e-6));
}

TEST_CASE("sensitivity: the closest pairs of the gallery follow full proofs on either side", "[remedy]") {
  Tally tally;
  for (const char* name :
       {"demo", "demo-cured", "costume-loft", "long-curl", "rolling-ladder", "three-section", "crowded-workshop"}) {
    compare(study(testing::gallery_text(name)), 5, tally);
  }
  CHECK(tally.compared >= 45);
  CHECK(tally.kinks <= tally.compared / 4);
  CHECK(tally.turns <= tally.compared / 6);
}

TEST_CASE("sensitivity: so do those of scenes with every length off by up to 4 mm", "[remedy]") {
  const Scene cured = parse_scene(testing::gallery_text("demo-cured"), "scene.yaml");
  std::mt19937 random(20261125);
  Tally tally;
  for (int tries = 0, done = 0; done < 2 && tries < 60; ++tries) {
    Scene scene = cured;
    std::uniform_real_distribution<double> off(-0.004, 0.004);
    for (const Measurement& m : measurements(cured)) {
      const double by = off(random);
      if (!m.angle && m.key.find("hooks") == std::string::npos && m.key.find("brackets") == std::string::npos)
        m.shift(scene, by);
    }
    try {
      compare(study(scene), 4, tally);
      ++done;
    } catch (const SceneError&) {  // a draw that cannot stand or folds further than its hinge lets it
    }
  }
  CHECK(tally.compared >= 15);
  CHECK(tally.kinks <= tally.compared / 4);
  CHECK(tally.turns <= tally.compared / 5);
}

TEST_CASE("sensitivity: a measurement moved by 1 mm moves the least clearance as told, and one left out does not",
          "[remedy]") {
  const Case c = study(testing::gallery_text("demo-cured"));
  for (const TightPlace& place : c.tight) {
    CHECK(std::is_sorted(place.by.begin(), place.by.end(), [](const Sensitivity& a, const Sensitivity& b) {
      return effect(a, 1e-3, kDegree) > effect(b, 1e-3, kDegree);
    }));
  }
  const int move = place_between(c, "fold line", "hinge").moves.front();
  const double here = proven_least(c.scene, move);
  CHECK(least_with(c.scene, "stair.hinges[0].offset", 1e-3, move) - here == Approx(-1e-3).margin(2e-6));
  CHECK(least_with(c.scene, "stair.casters.width", 1e-3, move) == Approx(here).margin(2e-8));
}

TEST_CASE("sensitivity: every measurement has words and a key that the table knows", "[remedy]") {
  for (const char* name : {"demo", "costume-loft", "three-section", "rolling-ladder", "crowded-workshop"}) {
    const Scene scene = parse_scene(testing::gallery_text(name), "scene.yaml");
    for (const Measurement& m : measurements(scene)) {
      std::string row;  // "stair.sections[0]" stands in the row "stair.sections", "procedure[3].fold" in its own
      int depth = 0;
      for (const char letter : m.key) {
        if (letter == '[') row += "[", ++depth;
        if (letter == ']') --depth;
        if (depth == 0 || letter == ']') row += letter;
      }
      while (row.ends_with("[]") && find_key(row) == nullptr) row.resize(row.size() - 2);
      INFO(name << ": " << m.key << " as " << row);
      CHECK(find_key(row) != nullptr);
      CHECK_FALSE(m.words.empty());
    }
  }
}

}  // namespace stowpath
