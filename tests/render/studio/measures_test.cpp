#include "render/studio/measures.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "sim/scene/reader.h"
#include "tests/support/full_scene.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

std::vector<MeasureLine> lines_of(const std::string& text, const std::string& saved) {
  return measure_lines(SceneDraft(text, "now.yaml"), SceneDraft(saved, "saved.yaml"));
}

const MeasureLine& line_of(const std::vector<MeasureLine>& lines, const std::string& key) {
  const auto found = std::find_if(lines.begin(), lines.end(), [&](const MeasureLine& line) { return line.key == key; });
  REQUIRE(found != lines.end());
  return *found;
}

void count_values(const DocumentNode& node, std::size_t& count) {
  if (node.kind == DocumentNode::Kind::text) ++count;
  for (const DocumentNode& item : node.items) count_values(item, count);
  for (const DocumentEntry& entry : node.entries) count_values(entry.value, count);
}

}  // namespace

TEST_CASE("measures: every plain value of a scene is a line of its own, with its row of the table", "[studio][measures]") {
  for (const std::string& text : {gallery_text("demo"), gallery_text("long-curl"), gallery_text("rolling-ladder"), std::string(full_scene())}) {
    const SceneDraft draft(text, "scene.yaml");
    std::size_t values = 0, shown = 0;
    count_values(draft.root(), values);
    std::set<std::string> keys;
    for (const MeasureLine& line : lines_of(text, text)) {
      INFO(line.key);
      CHECK(keys.insert(line.key).second);
      CHECK(line.row != nullptr);
      CHECK_FALSE(line.changed());
      CHECK_FALSE(measure_help(line, LengthUnit::millimetre).empty());
      if (!line.in_file) continue;
      ++shown;
      REQUIRE(draft.value(line.key) != nullptr);
      CHECK(draft.value(line.key)->text == line.text);
    }
    CHECK(shown + 1 == values);  // all but the number of the format
  }
}

TEST_CASE("measures: lines stand by subject, as a person reads the file", "[studio][measures]") {
  const auto lines = lines_of(gallery_text("demo"), gallery_text("demo"));
  const auto where = [&](const std::string& key) {
    const MeasureLine& line = line_of(lines, key);
    return line.group + " | " + line.label;
  };
  CHECK(where("stair.width") == "stair | width");
  CHECK(where("stair.sections[1]") == "stair | sections 2");
  CHECK(where("stair.hooks.stations[0]") == "stair hooks | stations 1");
  CHECK(where("rail.at.up") == "rail at | up");
  CHECK(where("obstacles[0].box.out[1]") == "obstacles 1, strip light | box out 2");
  CHECK(where("procedure[6].lift") == "procedure | 7 lift");
  CHECK(where("name") == "scene | name");
  std::set<std::string> groups;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (i == 0 || lines[i].group != lines[i - 1].group) CHECK(groups.insert(lines[i].group).second);
}

TEST_CASE("measures: what the file leaves out shows what then counts", "[studio][measures]") {
  const auto lines = lines_of(gallery_text("demo"), gallery_text("demo"));
  const MeasureLine& foot = line_of(lines, "stair.side rails.foot");
  CHECK_FALSE(foot.in_file);
  CHECK(foot.text == "square");
  CHECK(choices_of(foot) == std::vector<std::string>{"square", "level"});
  CHECK(choices_of(line_of(lines, "stair.width")).empty());
  CHECK(choices_of(line_of(lines, "hoist.rolls")) == std::vector<std::string>{"yes", "no"});
}

TEST_CASE("measures: what differs from the saved file says what was there", "[studio][measures]") {
  const std::string saved = gallery_text("demo");
  const auto lines = lines_of(changed(saved, "  width: 560\n", "  width: 600\n"), saved);
  CHECK(line_of(lines, "stair.width").changed());
  CHECK(line_of(lines, "stair.width").saved == "560");
  CHECK(std::count_if(lines.begin(), lines.end(), [](const MeasureLine& line) { return line.changed(); }) == 1);
}

TEST_CASE("measures: the help says what a setting is, takes and is left out as", "[studio][measures]") {
  const auto lines = lines_of(gallery_text("demo"), gallery_text("demo"));
  CHECK(measure_help(line_of(lines, "stair.width"), LengthUnit::millimetre) ==
        "Over the side rails. It takes a length, 100 to 3000 mm. It has no default. For example: 560");
  CHECK_THAT(measure_help(line_of(lines, "stair.width"), LengthUnit::inch),
             Catch::Contains(" in. It has no default. For example: 560 mm"));
}

TEST_CASE("measures: a search finds words anywhere in a line", "[studio][measures]") {
  const auto lines = lines_of(gallery_text("demo"), gallery_text("demo"));
  const MeasureLine& wrap = line_of(lines, "stair.hooks.wrap");
  CHECK(matches(wrap, ""));
  CHECK(matches(wrap, "HOOK wrap"));
  CHECK(matches(wrap, "195"));
  CHECK_FALSE(matches(wrap, "hook ceiling"));
}

TEST_CASE("measures: found by its value, a line is still found once that is changed", "[studio][measures]") {
  const std::string saved = gallery_text("demo");
  const auto lines = lines_of(changed(saved, "  width: 560\n", "  width: 605\n"), saved);
  for (const char* search : {"stair width 560", "stair width 605"}) CHECK(matches(line_of(lines, "stair.width"), search));
  CHECK_FALSE(matches(line_of(lines, "stair.width"), "stair width 570"));
}
