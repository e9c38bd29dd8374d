#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "render/report/hoist_report.h"
#include "tests/support/hoist_report_parts.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;
using nlohmann::json;
using stowpath::testing::HoistParts;
using stowpath::testing::sample_scene;

TEST_CASE("hoist json: the object carries schema, verdict and what the text tells", "[report]") {
  const HoistParts parts(sample_scene());
  const json out = json::parse(hoist_json(parts.hoist()));
  CHECK(out["schema"] == "stowpath.hoist/1");
  CHECK(out["pulled_by"] == "hand");
  CHECK(out["pull"]["raising"]["force_n"].get<double>() == Approx(parts.effort.peak));
  CHECK(out["limits"].size() == parts.effort.limits.size());
  CHECK(out["samples"].size() == parts.pull.samples.size());
  CHECK(out["holds"]["by"] == "nothing");
  CHECK(out["winch"].is_null());
}

TEST_CASE("hoist json: limits carry their source and their margin", "[report]") {
  const HoistParts parts(sample_scene());
  const json out = json::parse(hoist_json(parts.hoist()));
  for (const json& limit : out["limits"]) {
    CHECK_FALSE(limit["source"]["id"].get<std::string>().empty());
    CHECK(limit["margin_n"].get<double>() == Approx(limit["force_n"].get<double>() - parts.effort.peak));
  }
}

TEST_CASE("hoist json: the bill of masses adds up", "[report]") {
  const json masses = json::parse(hoist_json(HoistParts(sample_scene()).hoist()))["masses"];
  double sum = 0.0;
  for (const json& row : masses["bill"]) sum += row["total_kg"].get<double>();
  CHECK(sum == Approx(masses["total_kg"].get<double>()));
}
