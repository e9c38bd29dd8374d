#include "render/command/run.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/support/said.h"
#include "tests/support/scratch_folder.h"
#include "tests/support/xml_check.h"

using namespace stowpath;
using Catch::Contains;
using Catch::StartsWith;
using nlohmann::json;
using stowpath::testing::content;
using stowpath::testing::Said;
using stowpath::testing::said;

namespace {

const std::string kCured = STOWPATH_SOURCE_DIR "/scenes/demo-cured.yaml";
const std::string kBroken = "stowpath: 1\nunits: mm\nroom: {lenght: 7600, depth: 4600, ceiling: 4100}\n";

}  // namespace

TEST_CASE("command: the built-in demo runs without a file and finds what is wrong", "[command]") {
  const Said s = said({"dryfit"});
  CHECK(s.code == 1);
  CHECK_THAT(s.out, StartsWith("INTERFERENCE: "));
  CHECK(s.err.empty());
}

TEST_CASE("command: the cured demo is clear, and says so by its exit code", "[command]") {
  const Said s = said({"dryfit", kCured, "--quiet"});
  CHECK(s.code == 0);
  CHECK_THAT(s.out, StartsWith("CLEAR: no findings"));
  CHECK(std::count(s.out.begin(), s.out.end(), '\n') == 1);
}

TEST_CASE("command: a scene may come through standard input", "[command]") {
  CHECK(said({"dryfit", "-", "--quiet"}, content(kCured)).code == 0);
}

TEST_CASE("command: --json prints one object, nothing else", "[command]") {
  const Said s = said({"dryfit", "--json"});
  CHECK(json::parse(s.out)["schema"] == "stowpath.dryfit/1");
  CHECK(s.err.empty());
}

TEST_CASE("command: what may touch is counted, and listed where --contacts asks for it", "[command]") {
  const std::string counted = said({"dryfit", kCured}).out;
  CHECK_THAT(counted, Contains("--contacts"));
  CHECK_THAT(counted, !Contains("the hook hangs on the pipe"));
  const std::string listed = said({"dryfit", kCured, "--contacts"}).out;
  CHECK_THAT(listed, Contains("MAY TOUCH"));
  CHECK_THAT(listed, Contains("the hook hangs on the pipe"));
}

TEST_CASE("command: the JSON lists every pair that may touch, with place, time and depth", "[command]") {
  const json contacts = json::parse(said({"dryfit", kCured, "--json"}).out)["contacts"];
  REQUIRE(contacts.is_array());
  CHECK(contacts.size() > 5);
  for (const json& contact : contacts)
    for (const char* key : {"parts", "why", "when", "moves", "radius_m", "depth_at_most_m", "depth_as_drawn_m"})
      CHECK(contact.contains(key));
}

TEST_CASE("command: --units decides over the scene", "[command]") {
  CHECK_THAT(said({"dryfit", "--no-remedies", "--units", "in"}).out, Contains("Margins: 1/2\" in general"));
  CHECK_THAT(said({"dryfit", "--no-remedies", "--units=mm"}).out, Contains("Margins: 12 mm in general"));
}

TEST_CASE("command: colour follows --color, and the terminal without it", "[command]") {
  const auto coloured = [](const std::vector<std::string>& arguments, bool terminal) {
    return said(arguments, "", terminal).out.find('\033') != std::string::npos;
  };
  CHECK(coloured({"dryfit", "--no-remedies"}, true));
  CHECK_FALSE(coloured({"dryfit", "--no-remedies"}, false));
  CHECK(coloured({"dryfit", "--no-remedies", "--color=always"}, false));
  CHECK_FALSE(coloured({"dryfit", "--no-remedies", "--color=never"}, true));
  CHECK_FALSE(coloured({"dryfit", "--json", "--color=always"}, true));
}

TEST_CASE("command: -o writes the sheet whole, as its name ends, and no other file", "[command]") {
  const testing::ScratchFolder folder;
  CHECK(said({"dryfit", "-o", folder.file("sheet.svg"), "--quiet"}).code == 1);
  CHECK(testing::xml_fault(content(folder.file("sheet.svg"))) == "");
  CHECK(said({"hoist", "-o", folder.file("sheet.pdf"), "--quiet"}).code == 0);
  CHECK_THAT(content(folder.file("sheet.pdf")), StartsWith("%PDF-"));
  CHECK(said({"loads", "-o", folder.file("sheet.png"), "--quiet"}).code == 1);
  CHECK_THAT(content(folder.file("sheet.png")), StartsWith("\x89PNG"));
  CHECK(folder.entries() == 3);
}

TEST_CASE("command: no other kind of file is written, and that is said before any work", "[command]") {
  const testing::ScratchFolder folder;
  for (const char* name : {"sheet.jpg", "sheet", "svg", ".pdf"}) {
    const Said s = said({"dryfit", "-o", folder.file(name)});
    CHECK(s.code == 2);
    CHECK_THAT(s.err, Contains("a sheet is written as .svg, .pdf or .png"));
    CHECK(s.out.empty());
  }
  CHECK(folder.entries() == 0);
}

TEST_CASE("command: a place that cannot be written to is exit 3, with nothing printed", "[command]") {
  const testing::ScratchFolder folder;
  const Said s = said({"dryfit", "-o", folder.file("no/sheet.svg")});
  CHECK(s.code == 3);
  CHECK_THAT(s.err, Contains("no/sheet.svg: cannot be written: No such file or directory"));
  CHECK(s.out.empty());
}

TEST_CASE("command: a scene that is missing or a folder is exit 3", "[command]") {
  const testing::ScratchFolder folder;
  CHECK(said({"dryfit", folder.file("none.yaml")}).code == 3);
  CHECK(said({"dryfit", folder.file("")}).code == 3);
}

TEST_CASE("command: a broken scene is exit 2, placed, with a hint, and nothing is written", "[command]") {
  const testing::ScratchFolder folder;
  const Said s = said({"dryfit", "-", "-o", folder.file("sheet.svg")}, kBroken);
  CHECK(s.code == 2);
  CHECK_THAT(s.err, StartsWith("standard input:3:8: error: ") && Contains("length"));
  CHECK(s.out.empty());
  CHECK(folder.entries() == 0);
}

TEST_CASE("command: with --json the errors are JSON too", "[command]") {
  const json scene = json::parse(said({"dryfit", "-", "--json"}, kBroken).out);
  CHECK(scene["schema"] == "stowpath.error/1");
  CHECK(scene["errors"][0]["line"] == 3);
  CHECK(scene["errors"][0]["column"] == 8);
  const Said usage = said({"dryfit", "--json", "--unitz", "mm"});
  CHECK(usage.code == 2);
  CHECK(json::parse(usage.out)["errors"][0]["hint"] == "did you mean --units?");
  CHECK(usage.err.empty());
  CHECK(json::parse(said({"dryfit", "--json", "none.yaml"}).out)["errors"][0]["file"] == "none.yaml");
}

TEST_CASE("command: a word that is no command is answered with the nearest", "[command]") {
  const Said near = said({"dryfti"});
  CHECK(near.code == 2);
  CHECK_THAT(near.err, Contains("\"dryfti\" is not a command") && Contains("did you mean dryfit?"));
  CHECK(said({"banana"}).code == 2);
  CHECK(said({}).code == 2);
  CHECK(said({"dryfit", "one.yaml", "two.yaml"}).code == 2);
  CHECK(said({"dryfit", "--units", "furlongs"}).code == 2);
}

TEST_CASE("command: hoist answers who can lift it, as text, as JSON and on a sheet", "[command]") {
  const testing::ScratchFolder folder;
  const Said s = said({"hoist", kCured, "-o", folder.file("pull.svg")});
  CHECK((s.code == 0) == (s.out.rfind("WITHIN: ", 0) == 0));
  CHECK(testing::xml_fault(content(folder.file("pull.svg"))) == "");
  CHECK(json::parse(said({"hoist", kCured, "--json"}).out)["schema"] == "stowpath.hoist/1");
  CHECK(s.err.empty());
}

TEST_CASE("command: loads answers what holds, and fails where a piece bears less than it gets", "[command]") {
  const Said s = said({"loads", kCured, "--quiet"});
  CHECK((s.code == 0) == (s.out.rfind("WITHIN: ", 0) == 0));
  CHECK(json::parse(said({"loads", kCured, "--json"}).out)["schema"] == "stowpath.loads/1");
}

TEST_CASE("command: a hoist that is not there is a wrong command line", "[command]") {
  const std::string scene = content(kCured);
  const Said s = said({"hoist", "-"}, scene.substr(0, scene.find("\nhoist:")) + "\n");
  CHECK(s.code == 2);
  CHECK_THAT(s.err, Contains("this scene has no hoist"));
}

TEST_CASE("command: dryfit --sagged says how far the pipe gives way", "[command]") {
  CHECK_THAT(said({"dryfit", kCured, "--sagged"}).out, Contains("Pipe: gives"));
  CHECK(said({"dryfit", kCured}).out.find("Pipe: ") == std::string::npos);
}

TEST_CASE("command: the schema is printed as JSON", "[command]") {
  const Said s = said({"schema"});
  CHECK(s.code == 0);
  CHECK(json::parse(s.out)["$schema"] == "https://json-schema.org/draft/2020-12/schema");
}

TEST_CASE("command: help and version are answers, not errors", "[command]") {
  CHECK(said({"--version"}).code == 0);
  CHECK_THAT(said({"--version"}).out, StartsWith("stowpath "));
  const Said help = said({"dryfit", "--help"});
  CHECK(help.code == 0);
  CHECK_THAT(help.out, Contains("--json") && Contains("--units") && Contains("--color"));
}

TEST_CASE("command: a report that cannot be printed is exit 3", "[command]") {
  std::istringstream in;
  std::ostringstream out, err;
  out.setstate(std::ios::badbit);
  CHECK(run({"dryfit", "--quiet"}, {}, in, out, err) == 3);
  CHECK_THAT(err.str(), Contains("cannot be written"));
}

TEST_CASE("command: --detail draws the hook beside the sheet, under a name of its own", "[command]") {
  const testing::ScratchFolder folder;
  const std::string sheet = folder.file("sheet.svg"), detail = folder.file("hook.svg");
  CHECK(said({"dryfit", "-o", sheet, "--detail", detail, "--quiet"}).code == 1);
  CHECK(testing::xml_fault(content(sheet)).empty());
  CHECK(testing::xml_fault(content(detail)).empty());
  CHECK_THAT(content(detail), Contains("Hook detail: "));
  const Said same = said({"dryfit", "-o", sheet, "--detail", sheet});
  CHECK(same.code == 2);
  CHECK_THAT(same.err, Contains("-o and --detail both write"));
  const Said ending = said({"dryfit", "--detail", folder.file("hook.txt")});
  CHECK(ending.code == 2);
  CHECK_THAT(ending.err, Contains("--detail ") && Contains("a sheet is written as .svg, .pdf or .png"));
  CHECK_THAT(said({"dryfit", "--detial", detail}).err, Contains("did you mean --detail?"));
}

TEST_CASE("command: what to measure twice is told, but not for a bent pipe or in one line", "[command]") {
  CHECK_THAT(said({"dryfit"}).out, Contains("MEASURE TWICE: what 1 mm more gives"));
  CHECK_THAT(said({"dryfit", "--sagged"}).out, Contains("Told for the straight pipe only"));
  CHECK_THAT(said({"dryfit", "--quiet"}).out, !Contains("MEASURE"));
  const json told = json::parse(said({"dryfit", "--json", "--quiet"}).out);
  CHECK(told["measure_twice"]["places"].size() >= 4);
}

TEST_CASE("command: a window shows no scene from standard input", "[command]") {
  const Said s = said({"open", "-"});
  CHECK(s.code == 2);
  CHECK_THAT(s.err, Contains("a window cannot show a scene from standard input"));
}
