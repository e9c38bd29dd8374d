#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "tests/fuzz/checks.h"

namespace {

struct Target {
  std::string name;  // of the folder in corpus/ and of NAME_fuzz.cpp
  void (*check)(std::string_view text);
};

const std::vector<Target> kTargets{{"length", stowpath::testing::check_length},
                                   {"scene", stowpath::testing::check_scene_text},
                                   {"recording", stowpath::testing::check_recording_text},
                                   {"edit", stowpath::testing::check_edit}};

const std::filesystem::path kCorpus = std::filesystem::path(STOWPATH_SOURCE_DIR) / "tests/fuzz/corpus";

std::string content(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

// In order of name, so that every machine breaks the same bytes.
std::set<std::filesystem::path> files_of(const Target& target) {
  std::set<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(kCorpus / target.name)) files.insert(entry.path());
  return files;
}

// Cuts, doubles or overwrites a byte or two, the simplest of what a fuzzer does.
std::string broken(std::string text, std::mt19937& random) {
  const size_t at = std::uniform_int_distribution<size_t>(0, text.size())(random);
  switch (std::uniform_int_distribution<int>(0, 3)(random)) {
    case 0:
      return text.substr(0, at);
    case 1:
      return text.insert(at, 1, static_cast<char>(std::uniform_int_distribution<int>(0, 255)(random)));
    case 2:
      return text.insert(at, text.substr(at / 2, 2));
    default:
      return text.erase(at, 1);
  }
}

}  // namespace

TEST_CASE("corpus: every kept input keeps the promises of its reader", "[fuzz]") {
  for (const Target& target : kTargets) {
    const auto files = files_of(target);
    CHECK_FALSE(files.empty());
    for (const auto& file : files) {
      INFO(file.string());
      CHECK_NOTHROW(target.check(content(file)));
    }
  }
}

TEST_CASE("corpus: so does every kept input with a few bytes broken", "[fuzz][random]") {
  constexpr int kBroken = 20;  // each
  std::mt19937 random(11);
  for (const Target& target : kTargets) {
    for (const auto& file : files_of(target)) {
      for (int i = 0; i < kBroken; ++i) {
        const std::string text = broken(content(file), random);
        INFO(file.string() << " broken into: " << text);
        CHECK_NOTHROW(target.check(text));
      }
    }
  }
}

TEST_CASE("corpus: every folder of kept inputs has a reader to try them on", "[fuzz]") {
  std::set<std::string> folders, names;
  for (const auto& entry : std::filesystem::directory_iterator(kCorpus))
    folders.insert(entry.path().filename().string());
  for (const Target& target : kTargets) names.insert(target.name);
  CHECK(folders == names);
}
