#include "render/report/seat_words.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "render/report/json.h"
#include "render/report/text.h"
#include "sim/remedy/assess.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using Catch::Contains;
using json = nlohmann::json;

namespace {

Assessment cured(std::string_view from = "wrap: 195", std::string_view to = "wrap: 195",
                 Interval floor = {0.02, 0.05}) {
  Scene scene = parse_scene(testing::changed(testing::gallery_text("demo-cured"), from, to), "seat.yaml");
  scene.friction.floor = floor;
  return assess(scene);
}

}  // namespace

TEST_CASE("seat words: arc, worst pose, both ways off and the true range are said", "[report]") {
  const Assessment found = cured();
  const DisplayUnits metric = DisplayUnits::metric;
  CHECK_THAT(seat_sentence(found.model, found.seat, metric),
             Contains("cover 195° of the pipe") && Contains("from that end at the least") && Contains("not proven"));
  const std::string standing = hold_sentence("Standing", *found.seat.standing, metric);
  CHECK_THAT(standing, Contains("once it is lifted by 49 mm") && Contains("too late"));
  CHECK_THAT(hold_sentence("Parked", *found.seat.parked, metric), Contains("nothing stops it within 500 mm"));
  const std::string range = seat_range_sentence(found.model, found.seat, metric);
  CHECK_THAT(range, Contains("within 30° of the pipe's crown") && Contains("That is more in 1 roll, 4 drag, 5 hang"));
  CHECK(unjudged_sentence(found.model, found.seat).empty());
  const Assessment rough = cured("wrap: 195", "wrap: 195", {0.3, 0.7});
  CHECK_THAT(unjudged_sentence(rough.model, rough.seat), Contains("the dragged foot") && Contains("is not known"));
  CHECK(standing.find("safe") == std::string::npos);
}

TEST_CASE("seat words: a wide enough seat range in the scene is said to be counted with", "[report]") {
  const Assessment found = cured("wrap: 195", "wrap: 195, seat range: 90");
  CHECK_THAT(seat_range_sentence(found.model, found.seat, DisplayUnits::metric), Contains("That is less"));
}

TEST_CASE("seat words: the report has the section, and a finding says what happens and when", "[report]") {
  const Assessment found = cured("ceiling point: {out: 2550", "ceiling point: {out: 1300");
  TextOptions options;
  options.seat = &found.seat;
  const std::string text = dry_fit_text(found.model, found.fit, options);
  CHECK_THAT(text, Contains("SEAT, where the pipe bears on the hooks") && Contains("COMES OFF"));
  CHECK_THAT(text, Contains("1 unseated"));
  CHECK_THAT(text, Contains("the hooks slip off the pipe along their shanks"));
  options.seat = nullptr;
  CHECK(dry_fit_text(found.model, found.fit, options).find("SEAT") == std::string::npos);
}

TEST_CASE("seat words: JSON tells the seat beside the findings", "[report]") {
  const Assessment found = cured("wrap: 195", "wrap: 110");
  const json out = json::parse(dry_fit_json(found.model, found.fit, DisplayUnits::metric, {}, &found.seat));
  CHECK(out["findings"][0]["kind"] == "seat");
  const json& seat = out["seat"];
  CHECK(seat["covered_arc_deg"].get<double>() == Approx(110.0));
  CHECK(seat["worst"]["arc_left_deg"].get<double>() < 10.0);
  CHECK(seat["moves"].size() == found.model.moves.size());
  CHECK(seat["moves"][0]["counted_by_proof"] == true);
  CHECK(seat["standing"]["lift"]["needed_m"].get<double>() > 0.0);
  CHECK(seat["parked"]["slide"].contains("stopped_before_off"));
  CHECK_FALSE(json::parse(dry_fit_json(found.model, found.fit, DisplayUnits::metric)).contains("seat"));
}
