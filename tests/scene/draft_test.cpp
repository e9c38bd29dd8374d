#include "sim/scene/draft.h"

#include <catch2/catch.hpp>
#include <sstream>

#include "sim/scene/reader.h"
#include "sim/scene/scene_error.h"
#include "tests/support/full_scene.h"
#include "tests/support/gallery.h"
#include "tests/support/scene_numbers.h"

using namespace stowpath;

namespace {

SceneDraft draft_of(std::string text) { return SceneDraft(std::move(text), "test.yaml"); }

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

int lines_changed(const std::string& before, const std::string& after) {
  const auto a = lines_of(before), b = lines_of(after);
  if (a.size() != b.size()) return -1;
  int changed = 0;
  for (std::size_t i = 0; i < a.size(); ++i) changed += a[i] != b[i] ? 1 : 0;
  return changed;
}

// A text whose every byte matters: comments, odd spacing, quotes, a name beyond ASCII before a value on its line.
std::string marked_scene() {
  std::string text = testing::gallery_text("demo");
  text = testing::changed(std::move(text), "name: Mould loft over the casting benches",
                          "name: 'Gie\u00DFerei \u201CNord\u201D'");
  text = testing::changed(std::move(text), "{name: strip light, box: {out: [2350, 2470]",
                          "{name: \"L\u00E4mpchen \u2032\",   box: {out: [ 2350 , \"2470\" ]");
  return testing::changed(std::move(text), "wrap: 195,", "wrap: '195',");
}

}  // namespace

TEST_CASE("draft: a value is written in place, and no byte besides changes", "[scene][edit]") {
  const std::string text = marked_scene();
  const SceneDraft draft = draft_of(text);
  CHECK(draft.write({{"stair.hooks.wrap", "172"}}) == testing::changed(text, "wrap: '195',", "wrap: '172',"));
  CHECK(draft.write({{"obstacles[0].box.out[0]", "2490"}, {"obstacles[0].box.out[1]", "2610"}}) ==
        testing::changed(text, "[ 2350 , \"2470\" ]", "[ 2490 , \"2610\" ]"));
  CHECK(draft.write({{"procedure[6].lift", "88"}}) == testing::changed(text, "lift: 84", "lift: 88"));
  CHECK(draft.write({}) == text);
}

TEST_CASE("draft: line ends of Windows stay", "[scene][edit]") {
  std::string text;
  for (const std::string& line : lines_of(marked_scene())) text += line + "\r\n";
  const std::string after = draft_of(text).write({{"hoist.home", "4358"}});
  CHECK(after == testing::changed(text, "home: 4340\r", "home: 4358\r"));
}

TEST_CASE("draft: quotes hold what stands in them", "[scene][edit]") {
  const std::string text =
      testing::changed(testing::gallery_text("long-curl"), "up: 12' 2-1/2\"", "up: '12'' 2-1/2\"'");
  const SceneDraft draft = draft_of(text);
  const auto edit = draft.edit("rail.at.up", *draft.number("rail.at.up") + 0.0254);
  REQUIRE(edit);
  CHECK(edit->text == "12' 3-1/2\"");
  CHECK(draft.write({*edit}) == testing::changed(text, "'12'' 2-1/2\"'", "'12'' 3-1/2\"'"));
}

TEST_CASE("draft: a setting that the file leaves out is added, and nothing besides changes", "[scene][edit]") {
  const std::string text = marked_scene();
  const SceneDraft draft = draft_of(text);
  CHECK(draft.add({"stair.hooks.seat range", "20"}) == testing::changed(text, "hooks: {stations", "hooks: {seat range: 20, stations"));
  CHECK(draft.add({"stair.side rails.foot", "level"}) ==
        testing::changed(text, "side rails: {lumber", "side rails: {foot: level, lumber"));
  CHECK(draft.add({"stair.hinges[0].note", "a: b"}) == testing::changed(text, "hinges: [{face", "hinges: [{note: \"a: b\", face"));
  CHECK(draft.add({"hoist.spare", "no"}) == testing::changed(text, "hoist:\n", "hoist:\n  spare: no\n"));
  CHECK(draft.add({"spare", "no"}) == testing::changed(text, "stowpath: 1\n", "stowpath: 1\nspare: no\n"));
  CHECK_THROWS_AS(draft.add({"stair.width", "500"}), std::invalid_argument);
  CHECK_THROWS_AS(draft.add({"stair.sections.more", "500"}), std::invalid_argument);
}

TEST_CASE("draft: what the file leaves to its default has no place to be changed", "[scene][edit]") {
  const SceneDraft draft = draft_of(testing::gallery_text("rolling-ladder"));
  CHECK(draft.value("stair.hooks.seat range") == nullptr);
  CHECK_FALSE(draft.number("stair.hooks.seat range"));
  CHECK_FALSE(draft.edit("stair.hooks.seat range", 0.5));
  CHECK_THROWS_AS(draft.write({{"stair.hooks.seat range", "30"}}), std::invalid_argument);
  CHECK_THROWS_AS(draft.read({{"hoist.home", "30"}}), std::invalid_argument);
  CHECK_THROWS_AS(draft.add({"stair.handrails.height", "900"}), std::invalid_argument);
  CHECK(draft.value("obstacles[9].name") == nullptr);
  CHECK(draft.value("obstacles") == nullptr);
}

TEST_CASE("draft: text that would mean more than a value is refused", "[scene][edit]") {
  const SceneDraft draft = draft_of(testing::gallery_text("demo"));
  // In quotes it is one value, and none that the reader takes.
  CHECK(draft.write({{"procedure[6].lift", "88 # higher"}}) ==
        testing::changed(draft.text(), "lift: 84", "lift: \"88 # higher\""));
  CHECK_THROWS_AS(draft.read({{"stair.hooks.wrap", "172, rod: 3"}}), SceneError);
  CHECK_THROWS(draft.write({{"procedure[6].lift", "88\n  - lift: 90"}}));
  CHECK_THROWS_AS(draft.read({{"stair.hooks.wrap", "banana"}}), SceneError);
}

TEST_CASE("draft: every length and angle of the gallery can be changed by itself", "[scene][edit]") {
  int changed = 0;
  for (const char* name : {"demo", "long-curl", "rolling-ladder", "three-section", "costume-loft"}) {
    const std::string text = testing::gallery_text(name);
    const SceneDraft draft = draft_of(text);
    const Scene scene = draft.read();
    for (const auto& [key, place] : scene.where) {
      const auto number = draft.number(key);
      if (!number) continue;
      const auto edit = draft.edit(key, *number + 0.0015875);  // 1/16 in, or a tenth of a degree
      if (!edit) continue;                                     // no length or angle, or past its range
      INFO(name << " " << key << ": " << draft.value(key)->text << " to " << edit->text);
      const std::string after = draft.write({*edit});
      CHECK(lines_changed(text, after) == 1);
      CHECK(draft_of(after).number(key).value() == Approx(*number + 0.0015875).margin(2e-6));
      ++changed;
    }
  }
  CHECK(changed > 300);
}

TEST_CASE("draft: reading with other values is reading the written text", "[scene][edit]") {
  const SceneDraft draft = draft_of(std::string(testing::full_scene()));
  const std::vector<ValueEdit> edits{{"rail.at.up", "2910"}, {"stair.hooks.wrap", "190"}};
  const auto tried = testing::numbers_of(draft.read(edits));
  CHECK(tried == testing::numbers_of(parse_scene(draft.write(edits), "test.yaml")));
  CHECK(tried != testing::numbers_of(draft.read()));
}
