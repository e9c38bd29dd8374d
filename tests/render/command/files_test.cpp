#include "render/command/files.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "render/command/faults.h"
#include "tests/support/scratch_folder.h"

using namespace stowpath;
using stowpath::testing::content;

namespace {

std::string read(const std::string& name) {
  std::istringstream no_input;
  return read_text(name, no_input);
}

}  // namespace

TEST_CASE("files: what is written replaces the old file whole and leaves nothing beside it", "[command]") {
  const testing::ScratchFolder folder;
  const std::string name = folder.file("sheet.svg");
  write_whole(name, "old and longer");
  write_whole(name, "new");
  CHECK(content(name) == "new");
  CHECK(folder.entries() == 1);
}

TEST_CASE("files: a folder that is not there is said", "[command]") {
  const testing::ScratchFolder folder;
  CHECK_THROWS_WITH(write_whole(folder.file("no/sheet.svg"), "x"), "cannot be written: No such file or directory");
  CHECK(folder.entries() == 0);
}

TEST_CASE("files: what is not a plain file is not written over", "[command]") {
  const testing::ScratchFolder folder;
  std::filesystem::create_directory(folder.file("sheet.svg"));
  CHECK_THROWS_AS(write_whole(folder.file("sheet.svg"), "x"), FileFault);
  CHECK_THROWS_AS(write_whole("/dev/full", "x"), FileFault);
  CHECK(folder.entries() == 1);
}

TEST_CASE("files: a file written has the rights that any new file has", "[command]") {
  const testing::ScratchFolder folder;
  write_whole(folder.file("ours"), "x");
  std::ofstream(folder.file("plain")) << "x";
  CHECK(std::filesystem::status(folder.file("ours")).permissions() ==
        std::filesystem::status(folder.file("plain")).permissions());
}

TEST_CASE("files: reading tells a folder from a file that is missing", "[command]") {
  const testing::ScratchFolder folder;
  CHECK_THROWS_WITH(read(folder.file("")), "is a directory, not a file");
  CHECK_THROWS_WITH(read(folder.file("none.yaml")), "cannot be read: No such file or directory");
}

TEST_CASE("files: endless input is read no further than the reader needs", "[command]") {
  CHECK(read("/dev/zero").size() == (std::size_t{1} << 20U) + 1);
}

TEST_CASE("files: a dash is standard input", "[command]") {
  std::istringstream in("stowpath: 1\n");
  CHECK(read_text("-", in) == "stowpath: 1\n");
}
