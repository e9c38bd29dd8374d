#include "render/report/roll_report.h"
#include "render/report/rehearsal_report.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using Catch::Contains;
using Catch::StartsWith;
using nlohmann::json;

namespace {

/// A roll with what it was made of, which its subject refers to.
struct Rolled {
  Rolled(const std::string& text, double force, double height)
      : scene(parse_scene(text, "gallery")), model(build_model(scene)) {
    PushOptions options;
    options.force = force;
    options.height = height;
    report = roll_push(scene, model, options);
  }
  RollSubject subject(DisplayUnits units = DisplayUnits::metric) const { return {scene, model, report, units}; }

  Scene scene;
  Model model;
  RollReport report;
};

}  // namespace

TEST_CASE("roll text: a stair that may bind says from which friction, and from which height not", "[report]") {
  const Rolled rolled(testing::rig_text("demo"), 120.0, 1.1);
  const std::string text = roll_text(rolled.subject(), {});
  CHECK_THAT(
      text,
      StartsWith("MAY BIND: pushed along the rail towards higher stations with 120 N, 1.100 m above the floor the\n"
                 "  hooks jam from"));
  CHECK_THAT(text, Contains("\nWHY\n") && Contains("binds") && Contains("1.992 m above the floor up"));
  CHECK_THAT(text, Contains("proves no\n  clearance") || Contains("proves no clearance"));
  CHECK(text.find("safe") == std::string::npos);
  CHECK_FALSE(rolls_freely(rolled.subject()));
}

TEST_CASE("roll text: a ladder that rolls says what it takes", "[report]") {
  const Rolled rolled(testing::gallery_text("rolling-ladder"), 120.0, 1.1);
  CHECK_THAT(roll_line(rolled.subject()), StartsWith("ROLLS: ") && Contains("it takes 10 N to 3"));
  CHECK(rolls_freely(rolled.subject()));
}

TEST_CASE("roll text: a push that is too weak is told from one that binds", "[report]") {
  const Rolled rolled(testing::rig_text("demo"), 20.0, 2.5);
  CHECK_THAT(roll_line(rolled.subject()), StartsWith("STAYS: "));
  CHECK_FALSE(rolls_freely(rolled.subject()));
}

TEST_CASE("roll text: brackets in the way stand in the answer, in the scene's units", "[report]") {
  const Rolled rolled(testing::gallery_text("long-curl"), 120.0, 2.7);
  CHECK_THAT(roll_line(rolled.subject(DisplayUnits::imperial)),
             Contains("hook curl meets bracket arm") && Contains("ft/s"));
  CHECK_FALSE(rolls_freely(rolled.subject()));
}

TEST_CASE("roll text: which way the hand pushes, and how far from the middle, stands in the answer", "[report]") {
  Rolled rolled(testing::gallery_text("rolling-ladder"), -120.0, 1.1);
  CHECK_THAT(roll_line(rolled.subject()), Contains("along the rail towards lower stations with 120 N"));
  CHECK_THAT(roll_line(rolled.subject()), !Contains("middle"));
  rolled.report.asked.across = -0.2;
  CHECK_THAT(roll_line(rolled.subject()), Contains(" and 200 mm from the stair's middle towards lower stations") ||
                                              Contains(" and 0.200 m from the stair's middle towards lower stations"));
}

TEST_CASE("roll text: no number of it is metric where feet and inches are asked for", "[report]") {
  const Rolled rolled(testing::rig_text("demo"), 120.0, 1.1);
  const std::string text = roll_text(rolled.subject(DisplayUnits::imperial), {DisplayUnits::imperial, false});
  for (const char* metric : {" m/s", " J ", " J.", " mm", " N ", " N,", " kg"}) {
    CAPTURE(metric);
    CHECK_THAT(text, !Contains(metric));
  }
  CHECK_THAT(text, Contains("ft/s") && Contains("ft-lb"));
}

TEST_CASE("report: a bound on energy that is not 0 does not read as 0", "[report]") {
  CHECK(energy_bound_text({0.231}, DisplayUnits::metric, 2) == "at most 0.24 J");
  CHECK(energy_bound_text({0.004}, DisplayUnits::metric, 2) == "under 0.01 J");
  CHECK(energy_bound_text({0.0}, DisplayUnits::metric, 2) == "at most 0.00 J");
  CHECK(energy_bound_text({1.3558179483314}, DisplayUnits::imperial, 4) == "at most 1.0000 ft-lb");
}

TEST_CASE("report: a length is up to so much, or under the least that is told", "[report]") {
  CHECK(up_to_text({0.003}, DisplayUnits::metric) == "up to 3.0 mm");
  CHECK(up_to_text({0.00003}, DisplayUnits::metric) == "up to 0.1 mm");
}

TEST_CASE("roll json: it holds what the text says", "[report]") {
  const Rolled rolled(testing::rig_text("demo"), -120.0, 1.1);
  const json out = json::parse(roll_json(rolled.subject()));
  CHECK(out["schema"] == "stowpath.roll/1");
  CHECK(out["push"]["force_n"] == -120.0);
  CHECK(out["rolls_freely"] == false);
  CHECK(out["proves_clearance"] == false);
  REQUIRE(out["runs"].size() == 3);
  CHECK(out["runs"][2]["binds"] == true);
  CHECK(out["runs"][2]["push_needed_n"].is_null());
  CHECK(out["runs"][0]["push_needed_n"].get<double>() == Approx(33.7).margin(1.0));
  CHECK(out["free_stations_m"].size() == 1);
}
