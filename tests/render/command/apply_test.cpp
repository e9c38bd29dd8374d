#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "render/command/run.h"
#include "tests/support/gallery.h"
#include "tests/support/said.h"
#include "tests/support/scratch_folder.h"

using namespace stowpath;
using Catch::Contains;
using Catch::StartsWith;
using nlohmann::json;
using stowpath::testing::content;
using stowpath::testing::Said;
using stowpath::testing::said;

namespace {

void write(const std::string& file, const std::string& text) { std::ofstream(file, std::ios::binary) << text; }

const std::string kLongCurl = STOWPATH_SOURCE_DIR "/scenes/long-curl.yaml";

}  // namespace

TEST_CASE("apply: a cure is written into the scene's text, and nothing besides", "[command][remedy]") {
  const testing::ScratchFolder folder;
  const std::string file = folder.file("new.yaml");
  const Said s = said({"dryfit", kLongCurl, "--apply", "F1.1", "-o", file});
  CHECK(s.code == 0);
  CHECK(s.err.empty());
  CHECK_THAT(s.out, StartsWith("F1.1: trim the curl") && Contains("line 25, stair.hooks.wrap: 238 becomes 199") &&
                        Contains("CLEAR: no findings"));
  CHECK(content(file) == testing::changed(content(kLongCurl), "wrap: 238", "wrap: 199"));
  CHECK(said({"dryfit", file, "--quiet"}).code == 0);
  CHECK(folder.entries() == 1);
}

TEST_CASE("apply: the demo and standard input can be changed too", "[command][remedy]") {
  const testing::ScratchFolder folder;
  const Said demo = said({"dryfit", "--apply=F3.2", "-o", folder.file("demo.yaml")});
  CHECK(demo.code == 1);  // its other findings are left
  CHECK_THAT(demo.out, Contains("hoist.home: 4340 becomes 4366"));
  const Said piped = said({"dryfit", "-", "--apply", "F1.1", "-o", folder.file("piped.yml")}, content(kLongCurl));
  CHECK(piped.code == 0);
  CHECK(folder.entries() == 2);
}

TEST_CASE("apply: --json tells what was written as one object", "[command][remedy]") {
  const testing::ScratchFolder folder;
  const json told =
      json::parse(said({"dryfit", kLongCurl, "--apply", "F1.1", "-o", folder.file("new.yaml"), "--json"}).out);
  CHECK(told["schema"] == "stowpath.apply/1");
  CHECK(told["verdict"] == "clear");
  CHECK(told["remedy"]["change"] == "stair.hooks.wrap");
}

TEST_CASE("apply: an id that there is not is answered with those there are", "[command][remedy]") {
  const testing::ScratchFolder folder;
  const auto refused = [&](const std::string& id) {
    const Said s = said({"dryfit", kLongCurl, "--apply", id, "-o", folder.file("new.yaml")});
    CHECK(s.code == 2);
    CHECK(s.out.empty());
    return s.err;
  };
  CHECK_THAT(refused("F2.1"), Contains("there is no finding F2") && Contains("F1"));
  CHECK_THAT(refused("F1.9"), Contains("no such cure") && Contains("F1.1"));
  CHECK_THAT(refused("F1"), Contains("no such cure") && Contains("F1.1"));
  CHECK_THAT(refused("banana"), Contains("there is no finding banana"));
  CHECK(folder.entries() == 0);
}

TEST_CASE("apply: it needs a new scene file to write to", "[command][remedy]") {
  const testing::ScratchFolder folder;
  CHECK_THAT(said({"dryfit", kLongCurl, "--apply", "F1.1"}).err, Contains("-o new.yaml"));
  CHECK_THAT(said({"dryfit", kLongCurl, "--apply", "F1.1", "-o", folder.file("new.svg")}).err,
             Contains("a scene is written, as .yaml"));
  const std::string own = folder.file("own.yaml");
  write(own, content(kLongCurl));
  const Said over = said({"dryfit", own, "--apply", "F1.1", "-o", own});
  CHECK(over.code == 2);
  CHECK_THAT(over.err, Contains("would write over the scene itself"));
  CHECK(content(own) == content(kLongCurl));
  CHECK(said({"dryfit", kLongCurl, "--apply", "F1.1", "-o", folder.file("no/new.yaml")}).code == 3);
}

TEST_CASE("apply: a clear scene has nothing to cure", "[command][remedy]") {
  const testing::ScratchFolder folder;
  const Said s = said(
      {"dryfit", STOWPATH_SOURCE_DIR "/scenes/rolling-ladder.yaml", "--apply", "F1.1", "-o", folder.file("new.yaml")});
  CHECK(s.code == 2);
  CHECK_THAT(s.err, Contains("the scene is clear"));
}

TEST_CASE("apply: on the bent pipe no cures are looked for, and it says so", "[command][remedy]") {
  const testing::ScratchFolder folder;
  const Said s = said({"dryfit", kLongCurl, "--sagged", "--apply", "F1.1", "-o", folder.file("new.yaml")});
  CHECK(s.code == 2);
  CHECK_THAT(s.err, Contains("cures are not looked for with --sagged"));
  CHECK(said({"dryfit", kLongCurl, "--sagged"}).out.find("F1.1") == std::string::npos);
}

TEST_CASE("dryfit: what only the bent pipe puts out of order is the scene's fault", "[command][remedy]") {
  // Bent down, the stair leans a little more than the drag wants to reach.
  const std::string text = testing::gallery_text("demo-cured");
  const json straight = json::parse(said({"dryfit", "-", "--json"}, text).out);
  const double lean = straight["assumed"]["working_lean_deg"].get<double>() + 0.01;
  const std::string tight = testing::changed(text, "drag: {lean: 40}", "drag: {lean: " + std::to_string(lean) + "}");
  CHECK(said({"dryfit", "-", "--quiet", "--no-remedies"}, tight).code < 2);
  const Said s = said({"dryfit", "-", "--sagged"}, tight);
  CHECK(s.code == 2);
  CHECK_THAT(s.err, StartsWith("standard input:59:") && Contains("raises the stair"));
}

TEST_CASE("command: cures stand under their findings, in text and in JSON; --no-remedies leaves them out",
          "[command][remedy]") {
  const Said text = said({"dryfit"});
  CHECK_THAT(text.out, Contains("Cures, each proven on the whole scene:") && Contains("F3.1  trim the curl") &&
                           Contains("--apply ID -o NEW.yaml"));
  CHECK(said({"dryfit", "--no-remedies"}).out.find("F3.1") == std::string::npos);
  const json found = json::parse(said({"dryfit", kLongCurl, "--json"}).out);
  const json& remedy = found["findings"][0]["remedies"][0];
  CHECK(remedy["id"] == "F1.1");
  CHECK(remedy["change"] == "stair.hooks.wrap");
  CHECK(remedy["from"].get<double>() == Approx(238));
  CHECK(remedy["to"].get<double>() == Approx(199));
  CHECK(remedy["unit"] == "deg");
  CHECK(remedy["proved"] == true);
  CHECK(remedy["changes"].size() == 1);
}
