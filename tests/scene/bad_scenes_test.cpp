#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "sim/scene/reader.h"
#include "sim/scene/scene_error.h"

using namespace stowpath;

namespace {

const std::filesystem::path kBadScenes = std::filesystem::path(STOWPATH_SOURCE_DIR) / "tests/bad_scenes";

std::string content(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

// In order of name, so that the test tells the same first fault everywhere.
std::set<std::filesystem::path> bad_scenes() {
  std::set<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(kBadScenes)) {
    if (entry.path().extension() == ".yaml") files.insert(entry.path());
  }
  return files;
}

std::filesystem::path expected_file(std::filesystem::path scene) { return scene.replace_extension(".expected"); }

std::string messages(const std::filesystem::path& file) {
  const std::string text = content(file), name = file.filename().string();
  try {
    parse_scene(text, name);
    return "the scene was accepted\n";
  } catch (const SceneError& error) {
    std::string all;
    for (const Diagnostic& d : error.diagnostics) all += format_diagnostic(d, error.file, text, false) + "\n";
    return all;
  }
}

}  // namespace

TEST_CASE("bad scenes: each is refused with exactly the messages written beside it", "[scene]") {
  const auto files = bad_scenes();
  CHECK(files.size() >= 60);
  for (const auto& file : files) {
    INFO(file.string());
    CHECK(messages(file) == content(expected_file(file)));
  }
}

TEST_CASE("bad scenes: every message has a place, and all but those on the whole text a key or a hint", "[scene]") {
  for (const auto& file : bad_scenes()) {
    INFO(file.string());
    try {
      parse_scene(content(file), "scene.yaml");
      FAIL("the scene was accepted");
    } catch (const SceneError& error) {
      for (const Diagnostic& d : error.diagnostics) {
        INFO(d.problem);
        CHECK(d.at.line >= 1);
        CHECK_FALSE((d.key.empty() && d.hint.empty() && file.parent_path().filename() != "text"));
      }
    }
  }
}

// Hidden: run  stowpath_tests "[.regenerate-messages]"  after a change of wording, and read what changed.
TEST_CASE("regenerate the messages of bad scenes", "[.regenerate-messages]") {
  for (const auto& file : bad_scenes()) {
    std::ofstream stream(expected_file(file), std::ios::binary);
    stream << messages(file);
  }
}
