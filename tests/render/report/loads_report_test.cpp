#include "render/report/loads_report.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "render/report/hardware_words.h"
#include "tests/support/hoist_report_parts.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;
using Catch::Contains;
using Catch::StartsWith;
using nlohmann::json;
using stowpath::testing::HoistParts;
using stowpath::testing::sample_scene;

namespace {

HardwareItem piece(const std::string& name, double load, std::optional<double> resistance) {
  HardwareItem item;
  item.name = name;
  item.load = load;
  item.resistance = resistance;
  item.where = "somewhere";
  return item;
}

}  // namespace

TEST_CASE("hardware words: the weakest piece is named, and what it lacks", "[report]") {
  const std::vector<HardwareItem> items{piece("eye", 500.0, 250.0), piece("line", 100.0, 900.0),
                                        piece("joist", 700.0, std::nullopt)};
  CHECK(hardware_sentence(items, DisplayUnits::metric) ==
        "1 of 2 pieces bears less than it gets: the weakest, eye bears 0.50 times its 500 N, somewhere; 1 piece has no "
        "resistance known, first joist, which needs 700 N");
  CHECK(count_hardware(items).too_weak == 1);
}

TEST_CASE("hardware words: where all bear, the weakest is named too", "[report]") {
  const std::vector<HardwareItem> items{piece("line", 100.0, 900.0)};
  CHECK_THAT(hardware_sentence(items, DisplayUnits::metric),
             StartsWith("every one of 1 piece bears what it gets; the weakest, line bears 9.00 times"));
}

TEST_CASE("hardware words: a piece without load is not given an endless ratio", "[report]") {
  CHECK(times_text(piece("idle", 0.0, 900.0)) == "over 100");
  CHECK(times_text(piece("unknown", 10.0, std::nullopt)) == "?");
}

TEST_CASE("loads text: the answer comes first and agrees with the hardware", "[report]") {
  const HoistParts parts(sample_scene());
  const std::string text = loads_text(parts.loaded(), {});
  CHECK_THAT(text, StartsWith(std::string(verdict_word(loads_verdict(parts.loaded()))) + ": "));
  CHECK_THAT(text, Contains("\nRAIL\n") && Contains("\nSTANDING, with a person of ") &&
                       Contains("\nJOINT, each side") && Contains("\nMASSES\n"));
  CHECK(text.find("safe") == std::string::npos);
}

TEST_CASE("hardware words: what nothing is known of is not within, and a load for others to judge is no verdict's",
          "[report]") {
  const HardwareItem line = piece("line", 100.0, 900.0), eye = piece("eye", 500.0, std::nullopt);
  HardwareItem joist = piece("joist", 700.0, std::nullopt);
  joist.judged = false;
  CHECK(hardware_verdict({line, joist}) == HardwareVerdict::within);
  CHECK(hardware_verdict({line, eye}) == HardwareVerdict::not_said);
  CHECK(hardware_verdict({line, eye, piece("pin", 100.0, 99.9)}) == HardwareVerdict::over);
  CHECK(count_hardware({line, eye, joist}).unknown == 1);
}

TEST_CASE("hardware words: the answer says how much of it rests on figures from memory", "[report]") {
  HardwareItem pin = piece("pin", 100.0, 900.0);
  pin.status = SourceStatus::memory;
  CHECK_THAT(hardware_sentence({pin, piece("line", 100.0, 900.0)}, DisplayUnits::metric),
             Contains("what 1 piece bears rests on figures from memory"));
}

TEST_CASE("loads text: a piece that is not said is told what it needs, and what must not break it", "[report]") {
  const std::string text = loads_text(HoistParts(sample_scene()).loaded(), {});
  CHECK_THAT(text, Contains("NOT SAID") && Contains("needs ") && Contains(", to break past "));
}

TEST_CASE("loads text: members over the ceiling point get a load and no verdict", "[report]") {
  CHECK_THAT(loads_text(HoistParts(sample_scene()).loaded(), {}),
             Contains("framing member over the ceiling point") && Contains("a licensed engineer must accept"));
}

TEST_CASE("loads json: the object carries schema, hardware and the rail's series", "[report]") {
  const HoistParts parts(sample_scene());
  const json out = json::parse(loads_json(parts.loaded()));
  CHECK(out["schema"] == "stowpath.loads/1");
  CHECK(out["hardware"].size() == parts.loads.hardware.size());
  CHECK(out["rail"].size() == parts.loads.rails.size());
  CHECK_FALSE(out["rail"][0]["series"].empty());
  CHECK(out["hoisted"] == true);
}
