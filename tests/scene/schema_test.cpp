#include "sim/scene/schema.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <string>

#include "sim/scene/reader.h"
#include "sim/scene/reference.h"
#include "sim/scene/scene_error.h"
#include "tests/support/full_scene.h"

using namespace stowpath;

namespace {

const std::string kSchemaFile = STOWPATH_SOURCE_DIR "/scenes/stowpath.schema.json";
const std::string kReferenceFile = STOWPATH_SOURCE_DIR "/docs/scene-reference.md";

std::string content(const std::string& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

void write(const std::string& file, const std::string& text) {
  std::ofstream stream(file, std::ios::binary);
  stream << text;
  REQUIRE(stream.good());
}

}  // namespace

TEST_CASE("schema: scenes/stowpath.schema.json is what the key table makes", "[scene]") {
  CHECK(content(kSchemaFile) == scene_schema());
}

TEST_CASE("reference: docs/scene-reference.md is what the key table makes", "[scene]") {
  CHECK(content(kReferenceFile) == scene_reference());
}

TEST_CASE("reference: the message it shows is the one that the reader gives", "[scene]") {
  const std::string text = "room:\n  ceiling: high\n";
  try {
    parse_scene(text, "attic.yaml");
    FAIL("the scene was accepted");
  } catch (const SceneError& error) {
    const std::string message = format_diagnostic(error.diagnostics.front(), error.file, text, false);
    CHECK(scene_reference().find("```\n" + message + "\n```") != std::string::npos);
  }
}

// The Python check of the schema reads them from there.
TEST_CASE("schema: the fuzzer's first inputs are the tests' scenes", "[scene]") {
  const std::string corpus = STOWPATH_SOURCE_DIR "/tests/fuzz/corpus/scene/";
  CHECK(content(corpus + "full.yaml") == stowpath::testing::full_scene());
  CHECK(content(corpus + "plain.yaml") == stowpath::testing::plain_scene());
}

// Hidden: run  stowpath_tests "[.regenerate]"  after a change of the key table.
TEST_CASE("regenerate the schema and the reference page", "[.regenerate]") {
  write(kSchemaFile, scene_schema());
  write(kReferenceFile, scene_reference());
}
