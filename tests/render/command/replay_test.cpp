#include <catch2/catch.hpp>
#include <fstream>
#include <set>

#include "render/command/run.h"
#include "tests/support/said.h"
#include "tests/support/scratch_folder.h"

using namespace stowpath;
using Catch::Contains;
using Catch::StartsWith;
using stowpath::testing::ScratchFolder;
using stowpath::testing::content;
using stowpath::testing::Said;
using stowpath::testing::said;

TEST_CASE("command: a recorded rehearsal is drawn again to the same bytes", "[command]") {
  const ScratchFolder folder;
  const std::string kept = folder.file("run.txt"), drawn = folder.file("run.svg"), again = folder.file("again.svg");
  const Said first = said({"rehearse", "--from", "home", "--let-go", "3s", "--record", kept, "-o", drawn, "--quiet"});
  CHECK(first.code == 1);
  CHECK_THAT(content(kept), StartsWith("stowpath-recording 3\n") && Contains("--let-go") && Contains(" let-go "));
  const Said second = said({"rehearse", "--replay", kept, "-o", again});
  CHECK(second.code == 1);
  CHECK_THAT(second.out, StartsWith("REHEARSED: ") && Contains("WHAT HAPPENED, as recorded"));
  CHECK(content(again) == content(drawn));
  CHECK_THAT(said({"rehearse", "--replay", kept, "--json"}).out, Contains("stowpath.recording/1"));
}

// Verdict and exit code of a run are kept with it: what a cleat holds is an event, and no trouble.
TEST_CASE("command: a run told again ends as it ended", "[command]") {
  const std::string demo = STOWPATH_SOURCE_DIR "/scenes/demo.yaml", ladder = STOWPATH_SOURCE_DIR "/scenes/rolling-ladder.yaml";
  const std::vector<std::vector<std::string>> runs{{ladder},
                                                   {demo, "--only-up"},
                                                   {demo, "--push", "120N at 1.1m"},
                                                   {demo, "--push", "120N at 2.4m"},
                                                   {demo, "--push", "30N at 2.4m"}};
  std::set<int> codes;
  for (const std::vector<std::string>& run : runs) {
    CAPTURE(run);
    const ScratchFolder folder;
    const std::string kept = folder.file("run.txt");
    std::vector<std::string> first{"rehearse", "--record", kept, "--quiet"};
    first.insert(first.end(), run.begin(), run.end());
    const int code = said(first).code;
    codes.insert(code);
    const Said again = said({"rehearse", run[0], "--replay", kept}), json = said({"rehearse", run[0], "--replay", kept, "--json"});
    CHECK(again.code == code);
    CHECK_THAT(again.out, Contains("HOW GOOD THE NUMBERS ARE") && Contains("Energy from nowhere"));
    CHECK_THAT(again.out, Contains(code == 0 ? " UNEVENTFUL: " : " TROUBLE: "));
    CHECK_THAT(json.out, Contains(code == 0 ? "\"uneventful\"" : "\"trouble\""));
  }
  CHECK(codes == std::set<int>{0, 1});
}

TEST_CASE("command: a broken recording is refused at its place", "[command]") {
  const ScratchFolder folder;
  std::ofstream(folder.file("run.txt")) << "stowpath-recording 1\nscene \"a\"\noptions \"\"\nstep x\n";
  const Said s = said({"rehearse", "--replay", folder.file("run.txt")});
  CHECK(s.code == 2);
  CHECK_THAT(s.err, Contains("run.txt:4:6: error: the step is no number") && Contains("step x"));
  CHECK(s.out.empty());
}

TEST_CASE("command: a rehearsal's drawing has to end as something that can be drawn", "[command]") {
  const Said s = said({"rehearse", "-o", "run.gif"});
  CHECK(s.code == 2);
  CHECK_THAT(s.err, Contains(".html or .webp") && Contains("-o run.html"));
}

TEST_CASE("command: nothing can be changed in a run that is told again", "[command]") {
  CHECK(said({"rehearse", "--replay", "run.txt", "--let-go", "3s"}).code == 2);
  CHECK(said({"rehearse", "--replay", "run.txt", "--push", "120N at 1.1m"}).code == 2);
}
