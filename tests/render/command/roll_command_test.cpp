#include "render/command/roll_command.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "render/command/faults.h"
#include "tests/support/gallery.h"
#include "tests/support/said.h"
#include "tests/support/scratch_folder.h"

using namespace stowpath;
using Catch::Contains;
using Catch::StartsWith;
using stowpath::testing::said;
using stowpath::testing::Said;
using stowpath::testing::ScratchFolder;

TEST_CASE("push: a force, a height, and along the rail where nothing else is said", "[command]") {
  const HandPush push = asked_push("120N at 1.1m");
  CHECK(push.force == Approx(120.0));
  CHECK(push.height == Approx(1.1));
  CHECK(push.way == PushWay::along);
  CHECK_FALSE(push.seconds);
  Model model;
  model.floor_level = 0.2;
  const PushOptions roll = roll_push_options(asked_push("-27 lbf at 3ft 6in offset -8in along"), model);
  CHECK(roll.force == Approx(-27.0 * 4.4482216));
  CHECK(roll.height == Approx(1.2668));
  CHECK(roll.across == Approx(-8.0 * 0.0254));
}

TEST_CASE("push: outward, for a while, in any order", "[command]") {
  for (const char* text : {"120N at 1.1m outward for 2s", "120 N  for 2s outward at 1.1m", "120N outward at 1.1m for 2 s"}) {
    CAPTURE(text);
    const HandPush push = asked_push(text);
    CHECK(push.force == Approx(120.0));
    CHECK(push.height == Approx(1.1));
    CHECK(push.way == PushWay::outward);
    CHECK(push.seconds.value() == Approx(2.0));
  }
}

TEST_CASE("push: anything else is refused with what is wrong and what to write", "[command]") {
  const auto refusal = [](const char* text) -> std::string {
    try {
      asked_push(text);
    } catch (const UsageFault& fault) {
      return std::string(fault.what()) + " = " + fault.hint;
    }
    return "taken";
  };
  CHECK_THAT(refusal(""), Contains("it says no force") && Contains("\"120N at 1.1m along\""));
  CHECK_THAT(refusal("120N"), Contains("how high the hand is"));
  CHECK_THAT(refusal("120 at 1.1m"), Contains("its force"));
  CHECK_THAT(refusal("120N at 5"), Contains("the hand's height"));
  CHECK_THAT(refusal("120N at"), Contains("the hand's height"));
  CHECK_THAT(refusal("0N at 1m"), Contains("must be over 0"));
  CHECK_THAT(refusal("--5N at 1m"), Contains("its force"));
  CHECK_THAT(refusal("120N at 1m otward"), Contains("did you mean outward?"));
  CHECK_THAT(refusal("120N at 1m along please"), Contains("\"please\" is no word of a push"));
  CHECK_THAT(refusal("120N at 1m at 2m"), Contains("\"at\" stands there twice"));
  CHECK_THAT(refusal("120N at 1m along outward"), Contains("not both"));
  CHECK_THAT(refusal("120N at 1m along for 2s"), Contains("walks on with it"));
  CHECK_THAT(refusal("120N at 1m outward for two"), Contains("how long"));
  CHECK_THAT(refusal("120N at 1m outward offset 0.2m"), Contains("knows no offset"));
  CHECK_THAT(refusal("120N at 1m offset"), Contains("the offset"));
}

TEST_CASE("push: along the rail it is run by itself", "[command]") {
  const Said alone = said({"rehearse", "--push", "120N at 1.1m"});
  CHECK(alone.code == 1);
  CHECK_THAT(alone.out, StartsWith("MAY BIND: "));
  const Said both = said({"rehearse", "--push", "120N at 1.1m along", "--let-go", "3s"});
  CHECK(both.code == 2);
  CHECK_THAT(both.err, Contains("without the procedure") && Contains("120N at 1.1m outward"));
  CHECK_THAT(said({"rehearse", "--push", "120N at 9m"}).err, Contains("between the floor and the rail"));
  CHECK_THAT(said({"rehearse", "--push", "120N at 1m offset 2m"}).err, Contains("beside the stair"));
  CHECK(said({"rehearse", "--roll", "120N at 1.1m"}).code == 2);
}

// On a floor that lies lower the hand does too.
TEST_CASE("push: the hand's height counts from the floor's level", "[command]") {
  const std::string low = stowpath::testing::changed(stowpath::testing::gallery_text("rolling-ladder"),
                                                     "floor: {level: 0", "floor: {level: -40");
  const auto pushed = nlohmann::json::parse(said({"rehearse", "-", "--push", "120N at 1.1m", "--json"}, low).out);
  CHECK(pushed["push"]["height_m"].get<double>() == Approx(1.1));
  CHECK_THAT(pushed["text"].get<std::string>(), Contains("1.100 m above the floor"));
  const auto rehearsed = nlohmann::json::parse(said({"rehearse", "-", "--json"}, low).out);
  CHECK(rehearsed["rolls"][0]["tries"][0]["height_m"].get<double>() == Approx(1.1));
}

TEST_CASE("push: along the rail it is recorded, replayed and drawn", "[command]") {
  const ScratchFolder folder;
  const std::string kept = folder.file("roll.txt"), drawn = folder.file("roll.svg"), again = folder.file("again.svg");
  const Said first = said({"rehearse", "--push", "120N at 2.2m", "--record", kept, "-o", drawn, "--quiet"});
  CHECK(first.code == 0);
  const std::string text = testing::content(kept);
  CHECK_THAT(text, StartsWith("stowpath-recording 3\n") && Contains("takes-hold") && Contains("rail stop"));
  const Said second = said({"rehearse", "--replay", kept, "-o", again});
  CHECK_THAT(second.out, StartsWith("REHEARSED: the standing stair with --push ") && Contains("greatest push along"));
  CHECK(testing::content(again) == testing::content(drawn));
}
