#include "render/report/measure_text.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>
#include <sstream>

#include "render/report/wrap.h"
#include "tests/support/sample_dry_fit.h"

using namespace stowpath;
using Catch::Contains;

namespace {

/// A clear place with 4 mm to spare: a length in full, a corner, an angle of 57.3 mm per radian.
TightPlace clear_place() {
  TightPlace place;
  place.parts = {"hook curl", "loft"};
  place.moves = {0};
  place.clearance = 0.016;
  place.needed = 0.012;
  place.by = {{"loft.edge", "loft's edge", false, -1.0, -1.0},
              {"rail.at.out", "pipe's distance from the back wall", false, 0.5, -0.25},
              {"stair.hooks.wrap", "hooks' wrap", true, 0.0573, 0.0573},
              {"room.depth", "room's depth", false, 0.01, 0.01}};
  return place;
}

std::string told(const std::vector<TightPlace>& places, double tolerance) {
  ReportPage page(false);
  write_measure_twice(page, {places, tolerance}, DisplayUnits::metric);
  return page.text();
}

}  // namespace

TEST_CASE("measure twice: three measurements a place, with what an error takes", "[report]") {
  const std::string text = told({clear_place()}, 0.003);
  CHECK_THAT(text,
             Contains("  hook curl, loft: 4.0 mm to spare\n    loft's edge                             -1.00 mm"));
  CHECK_THAT(text, Contains("+0.50, if less +0.25 mm"));
  CHECK_THAT(text, Contains("+1.00 mm per 1°"));
  CHECK_THAT(text, !Contains("room's depth"));
  // 3 mm of the edge; the pipe's distance gains either way; 0.03 mm of the depth.
  CHECK_THAT(text, Contains("3.1 mm of the 4.0 mm to spare."));
}

TEST_CASE("measure twice: an error that takes more than is to spare is called too much", "[report]") {
  CHECK_THAT(told({clear_place()}, 0.003), !Contains("too much"));
  CHECK_THAT(told({clear_place()}, 0.005), Contains("5.0 mm, too much"));
}

TEST_CASE("measure twice: findings come first, and what is clear by its clearance", "[report]") {
  TightPlace roomy = clear_place(), found = clear_place();
  roomy.clearance = 0.05;
  roomy.parts[1] = "wall";
  found.findings = {"F1"};
  found.parts[1] = "lamp";
  found.clearance = -0.02;
  const std::string text = told({roomy, clear_place(), found}, 0.003);
  CHECK(text.find("F1  hook curl, lamp") < text.find("hook curl, loft"));
  CHECK(text.find("hook curl, loft") < text.find("hook curl, wall"));
  CHECK(told({}, 0.003).empty());
}

TEST_CASE("measure twice: no line is wider than the page", "[report]") {
  TightPlace place = clear_place();
  place.findings = {"F12"};
  place.parts = {"side rail", "bracket saddle"};
  std::istringstream lines(told({place}, 0.003));
  for (std::string line; std::getline(lines, line);) CHECK(columns(line) <= kPageWidth);
}

TEST_CASE("measure twice: JSON gives every measurement with its key, corners by their sides", "[report]") {
  TightPlace place = clear_place();
  place.by[3].more = std::numeric_limits<double>::quiet_NaN();
  const std::vector<TightPlace> places{place};
  const Json json = measure_twice_json(testing::dry_fit_model(), {places, 0.003});
  CHECK(json["tolerance_m"] == 0.003);
  const Json& told = json["places"][0];
  CHECK(told["to_spare_m"].get<double>() == Approx(0.004));
  REQUIRE(told["measurements"].size() == 4);
  CHECK(told["measurements"][0]["key"] == "loft.edge");
  CHECK(told["measurements"][0]["m_per_m"] == -1.0);
  CHECK(told["measurements"][1]["larger_m_per_m"] == 0.5);
  CHECK(told["measurements"][1]["smaller_m_per_m"] == 0.25);
  CHECK(told["measurements"][2]["m_per_deg"].get<double>() == Approx(0.0010000736));
  CHECK(told["measurements"][3]["larger_m_per_m"].is_null());
}
