#include "render/command/rehearse_command.h"

#include <filesystem>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "render/command/faults.h"
#include "render/command/run.h"
#include "sim/rehearsal/recording_text.h"
#include "sim/rehearsal/stage.h"
#include "tests/support/gallery.h"
#include "tests/support/sample_scene.h"
#include "tests/support/scratch_folder.h"

namespace stowpath {
namespace {

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using testing::ScratchFolder;

struct Answer {
  int code = 0;
  std::string out, err;
};
Answer ask(const std::vector<std::string>& arguments, const std::string& scene) {
  std::istringstream in(testing::gallery_text(scene));
  std::ostringstream out, err;
  const int code = run(arguments, {}, in, out, err);
  return {code, out.str(), err.str()};
}

TEST_CASE("rehearse command: what is to be tried is read with its units", "[render][rehearsal]") {
  WhatIfs asked;
  asked.let_go = "1.5 min";
  asked.push = "-27 lbf at 3ft 7in outward for 2s";
  const RehearsalOptions options = rehearsal_options(asked);
  CHECK(*options.let_go == Approx(90.0));
  CHECK(options.push->force == Approx(-27 * 4.4482216).epsilon(1e-6));
  CHECK(options.push->height == Approx(43 * 0.0254));
  CHECK(options.push->seconds == Approx(2.0));
  asked.gust = "-8 m/s for 3s";
  asked.when = "4s";
  CHECK(rehearsal_options(asked).gust->speed == Approx(-8.0));
  CHECK(rehearsal_options(asked).gust->seconds == Approx(3.0));
  CHECK(what_ifs_text(asked) ==
        "--let-go \"1.5 min\" --push \"-27 lbf at 3ft 7in outward for 2s\" --gust \"-8 m/s for 3s\" --when \"4s\"");
}

TEST_CASE("rehearse command: what cannot be read is refused with what to write", "[render][rehearsal]") {
  const auto refused = [](WhatIfs asked) -> std::string {
    try {
      rehearsal_options(asked);
    } catch (const UsageFault& fault) {
      return std::string(fault.what()) + " = " + fault.hint;
    }
    return "taken";
  };
  WhatIfs asked;
  asked.let_go = "12";
  CHECK_THAT(refused(asked), StartsWith("--let-go: \"12\" cannot be read = write it as 12s"));
  asked.let_go = "-3s";
  CHECK_THAT(refused(asked), Contains("cannot be read"));
  asked = {};
  asked.push = "120N";
  CHECK_THAT(refused(asked), Contains("\"120N at 1.1m along\""));
  asked = {};
  asked.gust = "10";
  CHECK_THAT(refused(asked), Contains("10 m/s"));
  asked = {};
  asked.when = "3s";
  CHECK_THAT(refused(asked), Contains("neither is asked"));
  asked.let_go = asked.line_breaks = "3s";
  CHECK_THAT(refused(asked), Contains("not both") && Contains("leave --let-go or --line-breaks out"));
  for (std::string WhatIfs::* loss : {&WhatIfs::let_go, &WhatIfs::line_breaks}) {
    asked = {};
    asked.no_pins = {1};
    asked.*loss = "3s";
    CHECK_THAT(refused(asked), Contains("nobody hooks the line on") && Contains("leave --no-pin out"));
  }
}

TEST_CASE("rehearse command: a time after every rehearsal's end is refused", "[render][rehearsal]") {
  for (const char* option : {"--let-go", "--line-breaks", "--when"}) {
    const Answer late = ask({"rehearse", "-", option, "40.1min", "--gust", "5 m/s"}, "demo-cured");
    CHECK(late.code == kExitUsage);
    CHECK_THAT(late.err, Contains(option + std::string(": 40.1min is after the end")) && Contains("40 min\n"));
  }
  WhatIfs asked;
  asked.let_go = "40min";
  CHECK(*rehearsal_options(asked).let_go == kLongestRehearsal);
}

TEST_CASE("rehearse command: an option that says nothing is refused, not left out", "[render][rehearsal]") {
  for (const char* option : {"--let-go", "--line-breaks", "--push", "--gust", "--when", "--from", "--record", "--replay",
                             "-o", "--no-pin"}) {
    for (const char* nothing : {"", " "}) {
      CAPTURE(option);
      const Answer empty = ask({"rehearse", "-", option, nothing}, "demo");
      CHECK(empty.code == kExitUsage);
      CHECK(empty.out.empty());
      CHECK_THAT(empty.err, Contains("nothing is written after it"));
    }
  }
  CHECK(ask({"rehearse", ""}, "demo").code == kExitUsage);
  CHECK(ask({"dryfit", "--apply", "", "-"}, "demo").code == kExitUsage);
}

TEST_CASE("rehearse command: --no-pin takes one hinge, and leaves the scene alone", "[render][rehearsal]") {
  const Answer one = ask({"rehearse", "--no-pin", "9", "-"}, "demo-cured");
  CHECK_THAT(one.err, Contains("--no-pin 9: there is no such hinge"));
  const Answer two = ask({"rehearse", "--no-pin", "1", "--no-pin", "9", "-"}, "demo-cured");
  CHECK_THAT(two.err, Contains("--no-pin 9: there is no such hinge"));
  for (const char* wrong : {"1.5", "one", "scene.yaml"}) {
    const Answer half = ask({"rehearse", "--no-pin", wrong, "-"}, "demo-cured");
    CHECK(half.code == kExitUsage);
    CHECK_THAT(half.err, Contains("--no-pin: \"" + std::string(wrong) + "\" is no hinge: they count 1, 2 from the rail"));
  }
}

TEST_CASE("rehearse command: faults speak in the units that are asked for", "[render][rehearsal]") {
  const Answer inches = ask({"rehearse", "-", "--from", "9m", "--units", "in"}, "demo");
  CHECK_THAT(inches.err, Contains("cannot stand at station 29'-6 5/16\""));
  CHECK_THAT(inches.err, !Contains(" m"));
  const Answer high = ask({"rehearse", "-", "--push", "120N at 9m", "--units", "in"}, "demo");
  CHECK_THAT(high.err, Contains("between the floor and the rail") && !Contains(".000 m") && Contains("9'-5 7/8\""));
  CHECK_THAT(ask({"rehearse", "-", "--push", "120N at 1m offset 2m", "--units", "in"}, "demo").err, !Contains(" m "));
}

TEST_CASE("rehearse command: a gust alone is told as a gust", "[render][rehearsal]") {
  const Answer gust = ask({"rehearse", "-", "--gust", "4 m/s", "--only-up"}, "demo-cured");
  CHECK_THAT(gust.out, Contains("\nTHE GUST\n") && Contains("The gust turned a section") && !Contains("THE PUSH"));
  const Answer both = ask({"rehearse", "-", "--gust", "4 m/s", "--push", "10N at 1m outward", "--only-up"}, "demo-cured");
  CHECK_THAT(both.out, Contains("\nPUSH AND GUST\n"));
}

TEST_CASE("rehearse command: a zone that is entered is told with the move, and whether on the way down", "[render][rehearsal]") {
  const auto json = nlohmann::json::parse(ask({"rehearse", "-", "--from", "home", "--only-up", "--json"}, "demo").out);
  REQUIRE(json["zones"].size() > 0);
  for (const auto& zone : json["zones"]) {
    CHECK(zone.contains("move"));
    CHECK(zone["backwards"] == false);
  }
}

TEST_CASE("rehearse command: a rehearsal never says that anything clears", "[render][rehearsal]") {
  const Answer ladder = ask({"rehearse", "-"}, "rolling-ladder");
  CHECK(ladder.code == kExitClear);
  CHECK_THAT(ladder.out, StartsWith("UNEVENTFUL: "));
  CHECK_THAT(ladder.out, Contains("proves no"));
  CHECK_THAT(ladder.out, !Contains("CLEAR"));
  CHECK_THAT(ladder.out, Contains("HOW GOOD THE NUMBERS ARE"));
}

TEST_CASE("rehearse command: let go, it says what then, as text and as one object", "[render][rehearsal]") {
  const Answer text = ask({"rehearse", "-", "--from", "home", "--let-go", "15s"}, "demo-cured");
  CHECK(text.code == kExitFails);
  CHECK_THAT(text.out, StartsWith("TROUBLE: the line is let go"));
  CHECK_THAT(text.out, Contains("WHAT THEN"));
  const auto json = nlohmann::json::parse(ask({"rehearse", "-", "--from", "home", "--let-go", "15s", "--json"}, "demo-cured").out);
  CHECK(json["schema"] == "stowpath.rehearsal/1");
  CHECK(json["proves_clearance"] == false);
  CHECK(json["what_then"]["from_s"].get<double>() == Approx(15.0).margin(0.01));
  CHECK(json["what_then"]["top_speed_m_s"].get<double>() > 0.1);
  CHECK(json["bounds"]["half_step"]["top_speed_m_s"].is_number());
  CHECK(json["bounds"]["half_step"].is_object());
  CHECK(json["moves"].size() == 2);
}

TEST_CASE("rehearse command: it tells the way down, or leaves it out where that is asked", "[render][rehearsal]") {
  const Answer whole = ask({"rehearse", "-"}, "demo-cured");
  CHECK_THAT(whole.out, Contains("THE WAY DOWN, moves backwards"));
  CHECK_THAT(whole.out, Contains("Then it stands again"));
  CHECK_THAT(whole.out, Contains("Someone draws the foot"));
  const auto json = nlohmann::json::parse(ask({"rehearse", "-", "--json", "--alone"}, "demo-cured").out);
  CHECK(json["moves"].back()["backwards"] == true);
  CHECK(json["stands_again"].is_null());
  CHECK_THAT(json["gave_up"].get<std::string>(), Contains("hangs loose"));
  CHECK_THAT(ask({"rehearse", "-", "--only-up"}, "demo-cured").out, !Contains("WAY DOWN"));
  const Answer both = ask({"rehearse", "-", "--only-up", "--alone"}, "demo-cured");
  CHECK(both.code == kExitUsage);
  CHECK_THAT(both.err, Contains("--only-up leaves that out"));
}

TEST_CASE("rehearse command: the stair is rolled home first, from where it is said to stand", "[render][rehearsal]") {
  const Answer far = ask({"rehearse", "-"}, "rolling-ladder");
  CHECK_THAT(far.out, Contains("ROLLED ALONG THE RAIL") && Contains("it rolls to its mark"));
  const auto near = nlohmann::json::parse(ask({"rehearse", "-", "--from", "1.2m", "--json"}, "rolling-ladder").out);
  REQUIRE(near["rolls"].size() == 1);
  CHECK(near["rolls"][0]["from_m"].get<double>() == Approx(1.2));
  CHECK(near["rolls"][0]["to_m"].get<double>() == Approx(2.5));
  CHECK(near["rolls"][0]["brought"] == false);
  CHECK(near["rolls"][0]["tries"][0]["ends"] == "arrived");
}

TEST_CASE("rehearse command: without a pin the stair stands at home, or where --from says", "[render][rehearsal]") {
  const ScratchFolder folder;
  const auto stood_at = [&](const std::vector<std::string>& more) {
    std::vector<std::string> arguments{"rehearse", "-", "--no-pin", "1", "--record", folder.file("run.txt"), "--quiet"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    ask(arguments, "demo-cured");
    return read_recording(testing::content(folder.file("run.txt")), "run.txt").frames.front().station;
  };
  CHECK(stood_at({}) == Approx(4.17));
  CHECK(stood_at({"--from", "3.4m"}) == Approx(3.4).margin(0.01));
}

TEST_CASE("rehearse command: what never comes is trouble, not an uneventful run", "[render][rehearsal]") {
  const Answer early = ask({"rehearse", "-", "--from", "home", "--only-up", "--let-go", "0s", "--json"}, "demo-cured");
  CHECK(early.code == kExitFails);
  const auto json = nlohmann::json::parse(early.out);
  CHECK(json["what_then"].is_null());
  CHECK_THAT(json["not_tried"][0].get<std::string>(), StartsWith("the line let go at 0.0 s"));
  CHECK_THAT(json["text"].get<std::string>(), StartsWith("TROUBLE: not tried: the line let go at 0.0 s"));
}

TEST_CASE("rehearse command: a refused run leaves no file", "[render][rehearsal]") {
  const ScratchFolder folder;
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  RehearsalReport report;
  report.recording.scene = model.name;
  report.refused = true;
  const RehearsalSubject subject{scene, model, report};
  const RehearsalFiles files{folder.file("run.txt"), folder.file("run.svg"), ""};
  keep_run(subject, files);
  CHECK_FALSE(std::filesystem::exists(files.record));
  CHECK_FALSE(std::filesystem::exists(files.drawing));
}

TEST_CASE("rehearse command: a station where the stair cannot stand is refused", "[render][rehearsal]") {
  CHECK_THAT(ask({"rehearse", "-", "--from", "9m"}, "demo").err, Contains("cannot stand at station 9.000 m"));
  CHECK_THAT(ask({"rehearse", "-", "--from", "9"}, "demo").err, Contains("--from: \"9\""));
  CHECK_THAT(ask({"rehearse", "-", "--from", "home"}, "rolling-ladder").err, Contains("there is no home station"));
}

TEST_CASE("rehearse command: a hinge or a line that is not there is refused", "[render][rehearsal]") {
  const Answer hinge = ask({"rehearse", "-", "--no-pin", "3"}, "demo-cured");
  CHECK(hinge.code == kExitUsage);
  CHECK_THAT(hinge.err, Contains("--no-pin 3: there is no such hinge"));
  const Answer line = ask({"rehearse", "-", "--let-go", "3s"}, "rolling-ladder");
  CHECK(line.code == kExitUsage);
  CHECK_THAT(line.err, Contains("no hoist line to let go"));
}

}  // namespace
}  // namespace stowpath
