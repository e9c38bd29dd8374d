#include "render/command/output_names.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "render/command/faults.h"
#include "tests/support/gallery.h"
#include "tests/support/said.h"
#include "tests/support/scratch_folder.h"

using namespace stowpath;
using Catch::Contains;
using stowpath::testing::content;
using stowpath::testing::Said;
using stowpath::testing::said;
using stowpath::testing::ScratchFolder;

namespace {

std::string refusal(const std::vector<NamedFile>& read, const std::vector<NamedFile>& written) {
  try {
    check_apart(read, written);
  } catch (const UsageFault& fault) {
    return fault.what();
  }
  return "taken";
}

}  // namespace

TEST_CASE("output names: one file is known under all its names, there or not", "[command]") {
  const ScratchFolder folder;
  const std::string file = folder.file("a.yaml");
  std::ofstream(file) << "a";
  std::filesystem::create_symlink(file, folder.file("link.yaml"));
  std::filesystem::create_directory(folder.file("sub"));
  std::filesystem::create_directory_symlink(folder.file("."), folder.file("loop"));
  for (const char* other : {"a.yaml", "./a.yaml", "sub/../a.yaml", "link.yaml", "loop/a.yaml"}) {
    CAPTURE(other);
    CHECK(same_file(file, folder.file(other)));
  }
  CHECK(same_file(folder.file("new.txt"), folder.file("loop/./new.txt")));
  CHECK(same_file("new.txt", "./new.txt"));
  CHECK_FALSE(same_file(file, folder.file("b.yaml")));
  CHECK_FALSE(same_file(folder.file("new.txt"), folder.file("sub/new.txt")));
}

TEST_CASE("output names: what is read is not written over, and one file not written twice", "[command]") {
  CHECK_THAT(refusal({{"", "a.yaml"}}, {{"--record", "./a.yaml"}}),
             Contains("--record ./a.yaml would write over the scene itself"));
  CHECK_THAT(refusal({{"--replay", "run.svg"}}, {{"-o", "run.svg"}}), Contains("over what --replay reads"));
  CHECK_THAT(refusal({}, {{"--record", "run.svg"}, {"-o", "./run.svg"}}), Contains("--record and -o both write"));
  CHECK(refusal({{"", "-"}, {"--replay", ""}}, {{"--record", "-"}, {"-o", "run.svg"}}) == "taken");
  CHECK(refusal({{"", "a.yaml"}}, {{"--record", ""}, {"-o", ""}}) == "taken");
}

TEST_CASE("output names: a rehearsal that would write over its scene is refused before it runs", "[command]") {
  const ScratchFolder folder;
  const std::string scene = folder.file("scene"), text = testing::gallery_text("demo");
  std::ofstream(scene, std::ios::binary) << text;
  std::filesystem::create_symlink(scene, folder.file("link"));
  const std::vector<std::vector<std::string>> ways{{"--push", "120N at 1.1m", "--record", scene},
                                                   {"--push", "120N at 1.1m", "--record", folder.file("./scene")},
                                                   {"--record", folder.file("link")},
                                                   {"--record", "-"},
                                                   {"--record", folder.file("new.yaml")},
                                                   {"--record", folder.file("r.svg"), "-o", folder.file("./r.svg")},
                                                   {"--replay", folder.file("r.svg"), "-o", folder.file("r.svg")}};
  for (std::vector<std::string> way : ways) {
    way.insert(way.begin(), {"rehearse", scene});
    const Said s = said(way);
    CAPTURE(s.err);
    CHECK(s.code == kExitUsage);
    CHECK(s.out.empty());
    CHECK_THAT(s.err, Contains("name"));
  }
  CHECK(content(scene) == text);
  CHECK(folder.entries() == 2);
}

TEST_CASE("output names: a dry fit writes its sheet and its detail into two files", "[command]") {
  const ScratchFolder folder;
  const Said s = said({"dryfit", "-o", folder.file("a.svg"), "--detail", folder.file("./a.svg")});
  CHECK(s.code == kExitUsage);
  CHECK_THAT(s.err, Contains("-o and --detail both write"));
  CHECK(folder.entries() == 0);
}

TEST_CASE("output names: a folder that is not there is found before the work is done", "[command]") {
  const ScratchFolder folder;
  const Said s = said({"rehearse", "--record", folder.file("none/run.txt")});
  CHECK(s.code == kExitFiles);
  CHECK_THAT(s.err, Contains("none/run.txt: cannot be written: No such file or directory"));
  CHECK(said({"rehearse", "-o", folder.file("none/run.svg")}).code == kExitFiles);
}
