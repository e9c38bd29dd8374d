#include <catch2/catch.hpp>
#include <sstream>

#include "render/report/hoist_report.h"
#include "render/report/hoist_words.h"
#include "render/report/wrap.h"
#include "tests/support/hoist_report_parts.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;
using Catch::Contains;
using Catch::StartsWith;
using stowpath::testing::HoistParts;
using stowpath::testing::sample_scene;

namespace {

std::string text_of(const Scene& scene, DisplayUnits units = DisplayUnits::metric) {
  return hoist_text(HoistParts(scene).hoist(units), {units, false});
}

Scene limited(double newtons) {
  Scene scene = sample_scene();
  scene.hoist->hand_limit = newtons;
  return scene;
}

}  // namespace

TEST_CASE("hoist text: the answer comes first, with the peak, the pose and the move", "[report]") {
  CHECK_THAT(text_of(limited(1000.0)), StartsWith("WITHIN: one person can haul this: the pull peaks at ") &&
                                           Contains("under your own limit") && Contains("in move "));
  CHECK_THAT(text_of(limited(10.5)), StartsWith("OVER: it is more than you want to pull") && Contains("over your own"));
}

TEST_CASE("hoist text: it never calls anything safe", "[report]") {
  CHECK(text_of(sample_scene()).find("safe") == std::string::npos);
}

TEST_CASE("hoist text: every limit stands with its source and status", "[report]") {
  const std::string text = text_of(sample_scene());
  CHECK_THAT(text, Contains("AGAINST WHAT PEOPLE PULL") && Contains("verified: ") && Contains("our judgement: "));
}

TEST_CASE("hoist text: what holds the stair when the hand lets go is said", "[report]") {
  CHECK_THAT(text_of(sample_scene()), Contains("Nothing: when the hand lets go, the stair comes down."));
  Scene cleated = sample_scene();
  cleated.hoist->cleat = true;
  CHECK_THAT(text_of(cleated), Contains("The cleat, once the fall is made fast on it"));
}

TEST_CASE("hoist text: a crank tells turns and minutes, and what a drill would take", "[report]") {
  Scene scene = sample_scene();
  Winch winch;
  winch.drum = 0.060;
  winch.crank = 0.250;
  scene.hoist->pulled_by = PulledBy::crank_winch;
  scene.hoist->winch = winch;
  CHECK_THAT(text_of(scene), Contains("THE WINCH") && Contains("turns at 30 turns a minute") &&
                                 Contains("by a drill at 300 turns a minute") &&
                                 Contains("AGAINST WHAT PEOPLE DO AT A CRANK"));
}

TEST_CASE("hoist text: masses, changes, hardware and cautions are there", "[report]") {
  const std::string text = text_of(sample_scene());
  CHECK_THAT(text, Contains("\nMASSES\n") && Contains("\nWHAT OTHER RIGGING WOULD ASK") && Contains("\nHARDWARE, ") &&
                       Contains("a licensed engineer must accept") && Contains("\nTAKEN FOR GRANTED\n"));
}

TEST_CASE("hoist text: imperial units show pounds", "[report]") {
  CHECK_THAT(text_of(sample_scene(), DisplayUnits::imperial),
             Contains(" lbf (") && Contains("raise, lbf") && Contains(" lb "));
}

TEST_CASE("hoist words: forces, masses, torques and times are rounded for reading", "[report]") {
  CHECK(force_text(Nominal{97.6}, DisplayUnits::metric) == "98 N");
  CHECK(force_text(Nominal{0.27}, DisplayUnits::metric) == "0.3 N");
  CHECK(force_text(Nominal{12345.0}, DisplayUnits::metric) == "12.3 kN");
  CHECK(force_text(Nominal{100.0}, DisplayUnits::imperial) == "22 lbf (100 N)");
  CHECK(mass_text(Nominal{1.0}, DisplayUnits::imperial) == "2.2 lb");
  CHECK(torque_text(Nominal{1.3558}, DisplayUnits::imperial) == "1.0 ft-lb");
  CHECK(minutes_text(Nominal{0.5}) == "30 s");
  CHECK(minutes_text(Nominal{6.26}) == "6.3 min");
}
