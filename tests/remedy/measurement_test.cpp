#include "sim/remedy/measurement.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "sim/scene/key_table.h"
#include "sim/scene/reader.h"
#include "tests/support/full_scene.h"
#include "tests/support/gallery.h"
#include "tests/support/scene_numbers.h"

namespace stowpath {
namespace {

constexpr double kDegree = 0.017453292519943295;

struct Change {
  std::string key, from, to;  ///< the text before and after, which makes the key's number larger
  double by;                  ///< by this much [m or rad]
};

Scene shifted(const Scene& scene, const std::string& key, double by) {
  Scene out = scene;
  int found = 0;
  for (const Measurement& m : measurements(scene)) {
    if (m.key == key) m.shift(out, by), ++found;
  }
  for (int i = 0; i < static_cast<int>(scene.obstacles.size()); ++i) {
    for (const ThingMeasurement& m : obstacle_measurements(scene, i)) {
      if (m.key == key) m.shift(out.obstacles[static_cast<std::size_t>(i)], by), ++found;
    }
  }
  INFO(key);
  CHECK(found == 1);
  return out;
}

/// The shift does to the scene what the file with the other number says.
void check(const std::string& text, const Change& change) {
  INFO(change.key << ": " << change.from << " to " << change.to);
  const Scene scene = parse_scene(text, "scene.yaml");
  const std::vector<double> moved = testing::numbers_of(shifted(scene, change.key, change.by));
  const std::vector<double> said =
      testing::numbers_of(parse_scene(testing::changed(text, change.from, change.to), "scene.yaml"));
  REQUIRE(moved.size() == said.size());
  for (std::size_t i = 0; i < moved.size(); ++i) CHECK(moved[i] == Approx(said[i]).margin(1e-12));
}

/// The row of the table that a key stands in: "stair.sections[0]" in "stair.sections".
const KeyRow* row_of(const std::string& key) {
  std::string row;
  int depth = 0;
  for (const char letter : key) {
    if (letter == '[') row += letter, ++depth;
    if (letter == ']') --depth;
    if (depth == 0) row += letter;
  }
  while (row.ends_with("[]") && find_key(row) == nullptr) row.resize(row.size() - 2);
  return find_key(row);
}

std::vector<std::string> all_keys(const Scene& scene) {
  std::vector<std::string> out;
  for (const Measurement& m : measurements(scene)) out.push_back(m.key);
  for (int i = 0; i < static_cast<int>(scene.obstacles.size()); ++i) {
    for (const ThingMeasurement& m : obstacle_measurements(scene, i)) out.push_back(m.key);
  }
  for (int i = 0; i < static_cast<int>(scene.zones.size()); ++i) {
    for (const ThingMeasurement& m : zone_measurements(scene, i)) out.push_back(m.key);
  }
  return out;
}

/// Wishes, assumptions, what only the loads read, and what is none in the scene.
bool left_out(const Scene& scene, const std::string& key) {
  for (const char* part : {"margin.", "tolerances.", "climber.", "screws", ".eye.", "framing", "pulled by", ".tail",
                           ".wall", ".limit", "seat range", ".rise"}) {
    if (key.find(part) != std::string::npos) return true;
  }
  const bool no_tip = key == "stair.hooks.tip" && scene.stair.hooks.tip == 0.0;
  const bool no_spacer = key.ends_with(".spacer") && scene.stair.locks.front().spacer == 0.0;
  const bool no_plate = key == "stair.casters.plate" && scene.stair.casters.plate == 0.0;
  return no_tip || no_spacer || no_plate || (key == "rail.joints" && scene.rail.joints.empty());
}

}  // namespace

TEST_CASE("measurement: what it shifts is what the file with the other number says", "[remedy]") {
  const std::string demo = testing::gallery_text("demo");
  for (const Change& change :
       std::vector<Change>{{"rail.at.up", "at: {out: 975, up: 2900}", "at: {out: 975, up: 2907}", 0.007},
                           {"rail.brackets.every", "every: 860", "every: 861", 0.001},
                           {"rail.brackets.saddle[1]", "saddle: [40, 2]", "saddle: [40, 3]", 0.001},
                           {"loft.edge", "edge: 900", "edge: 903", 0.003},
                           {"stair.sections[1]", "sections: [1780, 1475]", "sections: [1780, 1478]", 0.003},
                           {"stair.hinges[0].offset", "offset: 12", "offset: 13", 0.001},
                           {"stair.hooks.wrap", "wrap: 195", "wrap: 197", 2.0 * kDegree},
                           {"stair.hooks.inside", "inside: 24", "inside: 25", 0.001},
                           {"obstacles[0].box.up[0]", "up: [2780, 2860]", "up: [2781, 2860]", 0.001},
                           {"obstacles[0].stations[1]", "stations: [900, 5400]", "stations: [900, 5403]", 0.003},
                           {"hoist.ceiling point.up", "up: 4080", "up: 4081", 0.001},
                           {"procedure[3].drag.lean", "drag: {lean: 40}", "drag: {lean: 41}", kDegree},
                           {"procedure[5].fold", "- fold: 176", "- fold: 177", kDegree}}) {
    check(demo, change);
  }
}

TEST_CASE("measurement: posts, round and square, grow about their centre", "[remedy]") {
  const std::string demo = testing::gallery_text("demo");
  const std::string post = "obstacles:\n  - {name: post, post: {out: 3600, station: 900, ";
  const auto with = [&](const std::string& size) {
    return testing::changed(demo, "obstacles:\n", post + size + "}}\n");
  };
  check(with("diameter: 90"), {"obstacles[0].post.diameter", "diameter: 90}", "diameter: 91}", 0.001});
  check(with("diameter: 90"), {"obstacles[0].post.out", "out: 3600", "out: 3601", 0.001});
  check(with("size: [90, 140]"), {"obstacles[0].post.size[0]", "size: [90, 140]", "size: [91, 140]", 0.001});
  check(with("size: [90, 140]"), {"obstacles[0].post.size[1]", "size: [90, 140]", "size: [90, 141]", 0.001});
  check(with("size: [90, 140]"), {"obstacles[0].post.station", "station: 900", "station: 901", 0.001});
}

TEST_CASE("measurement: what follows the pipe's size unless it is given goes along", "[remedy]") {
  const std::string measured =
      testing::changed(testing::gallery_text("demo"), "pipe: NPS 1", "pipe: {diameter: 33.4, wall: 3.4}");
  const std::string jointed = testing::changed(measured, "joints: none", "joints: [3000, 5000]");
  check(jointed, {"rail.pipe.diameter", "diameter: 33.4", "diameter: 33.5", 0.0001});
  check(jointed, {"rail.joints[1]", "[3000, 5000]", "[3000, 5001]", 0.001});
  const std::string sized =
      testing::changed(measured, "joints: none", "joints: {at: [3000, 5000], diameter: 42, length: 50}");
  check(sized, {"rail.pipe.diameter", "diameter: 33.4", "diameter: 33.5", 0.0001});
  check(sized, {"rail.joints.diameter", "diameter: 42", "diameter: 43", 0.001});
  check(sized, {"rail.joints.length", "length: 50}", "length: 51}", 0.001});
  check(sized, {"rail.joints.at[0]", "[3000, 5000]", "[3001, 5000]", 0.001});
}

TEST_CASE("measurement: every length and angle that a scene gives is one, but for what shapes nothing", "[remedy]") {
  std::vector<std::string> texts{std::string(testing::full_scene())};  // holds what the gallery does without
  for (const char* name :
       {"demo", "costume-loft", "three-section", "rolling-ladder", "crowded-workshop", "strap-rail", "post-rail"})
    texts.push_back(testing::gallery_text(name));
  for (const std::string& text : texts) {
    const Scene scene = parse_scene(text, "scene.yaml");
    const std::vector<std::string> keys = all_keys(scene);
    for (const auto& [key, place] : scene.where) {
      const KeyRow* row = row_of(key);
      if (row == nullptr || left_out(scene, key)) continue;
      if ((row->forms & (kLength | kAngle | kLengths | kAngles | kInterval | kPoints)) == 0U) continue;
      // A key's own, one of its entries', or, for a list's entry or a size that stands for several, that of its list.
      const auto told = std::any_of(keys.begin(), keys.end(), [&](const std::string& k) {
        return k == key || k.starts_with(key + "[") || k.starts_with(key + ".") || key.starts_with(k + "[");
      });
      INFO(scene.name << ": " << key);
      CHECK(told);
    }
  }
}

}  // namespace stowpath
