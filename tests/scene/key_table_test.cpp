#include "sim/scene/key_table.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "sim/scene/document.h"
#include "sim/scene/key_value.h"
#include "sim/scene/reader.h"
#include "tests/support/full_scene.h"

using namespace stowpath;
using stowpath::testing::full_scene;
using stowpath::testing::full_scenes;
using stowpath::testing::replaced;

namespace {

bool is_remark(std::string_view text) { return !text.empty() && text.front() == '('; }

std::set<std::string> paths_given(const std::string& text) {
  std::set<std::string> paths;
  for (const auto& [path, place] : parse_scene(text, "scene.yaml").where) {
    const std::string row = std::regex_replace(path, std::regex("\\[[0-9]+\\]"), "[]");
    if (!row.empty() && row.back() != ']') paths.insert(row);
  }
  return paths;
}

DocumentNode example_of(const KeyRow& row) {
  const std::string text = "x: " + std::string(row.example) + "\n";
  const SourceText source(text);
  return parse_document(source, "example").entries.front().value;
}

void check_numbers(const KeyRow& row, const DocumentNode& node) {
  const std::vector<std::string_view> words = row.word_list();
  const bool word = std::find(words.begin(), words.end(), node.text) != words.end();
  if (node.kind == DocumentNode::Kind::text && number_form(row) != 0 && !word) {
    CHECK(read_number(row, node.text, LengthUnit::millimetre).problem == "");
  }
  for (const DocumentNode& item : node.items) check_numbers(row, item);
}

void check_keys_known(std::string_view path, const DocumentNode& node) {
  for (const DocumentEntry& entry : node.entries) {
    INFO(entry.key.text);
    const KeyRow* row = find_key(std::string(path) + "." + entry.key.text);
    REQUIRE(row != nullptr);
    check_numbers(*row, entry.value);
  }
  for (const DocumentNode& item : node.items) check_keys_known(std::string(path) + "[]", item);
}

}  // namespace

TEST_CASE("key table: every path is there once, after the setting it belongs to", "[scene]") {
  std::set<std::string_view> seen;
  for (const KeyRow& row : key_table()) {
    INFO(row.path);
    std::string_view parent = row.parent();
    if (!parent.empty() && parent.substr(parent.size() - 2) == "[]") parent.remove_suffix(2);
    CHECK((parent.empty() || seen.count(parent) == 1));
    CHECK(seen.insert(row.path).second);
    CHECK(find_key(row.path) == &row);
  }
  CHECK(seen.size() > 130);
}

TEST_CASE("key table: the reader takes every setting of it, and no scene has another", "[scene]") {
  std::set<std::string> given, table;
  for (const std::string& text : full_scenes()) given.merge(paths_given(text));
  for (const KeyRow& row : key_table()) table.insert(std::string(row.path));
  for (const std::string& path : table) {
    INFO(path);
    CHECK(given.count(path) == 1);
  }
  CHECK(given == table);
}

TEST_CASE("key table: each row has a form, a sentence and an example", "[scene]") {
  for (const KeyRow& row : key_table()) {
    INFO(row.path);
    CHECK(row.forms != 0);
    CHECK_FALSE(row.if_missing.empty());
    CHECK_FALSE(row.example.empty());
    CHECK(row.help.size() > 5);
    CHECK(row.help.back() == '.');
    CHECK(row.takes(kWord | kWords) == !row.words.empty());
    const unsigned numbers =
        row.forms & (kMeasureForms | kLengths | kAngles | kMasses | kInterval | kSpan | kIntervals | kPoints);
    CHECK((numbers != 0) == std::isfinite(row.range.low));
    CHECK((numbers == 0 || row.range.low <= row.range.high));
  }
}

TEST_CASE("key table: defaults are values that the setting itself takes", "[scene]") {
  for (const KeyRow& row : key_table()) {
    if (row.required() || is_remark(row.if_missing)) continue;
    INFO(row.path);
    const std::vector<std::string_view> words = row.word_list();
    if (std::find(words.begin(), words.end(), row.if_missing) != words.end()) continue;
    if (row.takes(kFlag)) {
      CHECK(read_flag(row.if_missing));
    } else if (number_form(row) != 0) {
      CHECK(default_number(row, LengthUnit::millimetre).value);
      CHECK(default_number(row, LengthUnit::inch).value);
    } else {
      CHECK(row.takes(kText));
    }
  }
}

TEST_CASE("key table: examples are values that the setting itself takes", "[scene]") {
  for (const KeyRow& row : key_table()) {
    if (row.example.find("...") != std::string_view::npos) continue;
    INFO(row.path);
    const DocumentNode node = example_of(row);
    check_numbers(row, node);
    check_keys_known(row.path, node);
  }
}

TEST_CASE("key table: ranges are told in the file's units", "[scene]") {
  CHECK(range_text(*find_key("stair.hinges[].limit"), LengthUnit::inch) == "0 to 180 degrees");
  CHECK(range_text(*find_key("margin.default"), LengthUnit::millimetre) == "0 to 200 mm");
  CHECK(range_text(*find_key("margin.default"), LengthUnit::inch) == "0 to 7.874 in");
  CHECK(range_text(*find_key("hoist.line.parts"), LengthUnit::inch) == "1 to 12");
  CHECK(range_text(*find_key("rail.stops"), LengthUnit::inch).empty());
}

TEST_CASE("key table: the ends of a range are in it, in any unit", "[scene]") {
  const KeyRow& margin = *find_key("margin.default");
  CHECK(read_number(margin, "200", LengthUnit::millimetre).value);
  CHECK(read_number(margin, "0.2 m", LengthUnit::millimetre).value);
  CHECK(read_number(margin, "200.01", LengthUnit::millimetre).problem == "200.01 is outside 0 to 200 mm");
  CHECK(read_number(*find_key("stair.hinges[].limit"), "180", LengthUnit::inch).value);
}
