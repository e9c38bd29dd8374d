#include "render/report/json.h"

#include <catch2/catch.hpp>
#include <limits>
#include <nlohmann/json.hpp>

#include "tests/support/sample_dry_fit.h"

using namespace stowpath;
using nlohmann::json;

namespace {

json report(const DryFit& fit) {
  return json::parse(dry_fit_json(testing::dry_fit_model(), fit, DisplayUnits::metric));
}

}  // namespace

TEST_CASE("json report: it carries what its schema's name promises", "[report]") {
  const json j = report(testing::sample_dry_fit());
  CHECK(j["schema"] == "stowpath.dryfit/1");
  CHECK(j["scene"] == "Wheel loft over the truing benches");
  CHECK(j["verdict"] == "interference");
  CHECK(j["margins_m"] == json::parse(R"({"default": 0.012, "hook": 0.003, "self": 0.003})"));
  const json& move = j["moves"][1];
  CHECK(move["index"] == 1);
  CHECK(move["kind"] == "roll");
  CHECK(move["verdict"] == "interference");
  CHECK(move["clearance_at_most_m"] == -0.009);
  CHECK(move["closest"]["parts"] == json::parse(R"(["hook curl", "bracket arm"])"));
  CHECK(move["closest"]["station_m"] == 4.0);
  CHECK(move["closest"]["folds_deg"].size() == 1);
  CHECK(j["reach"]["span_m"] == 7.0);
  CHECK(j["reach"]["standing_stations_m"].size() == 3);
  CHECK(j["work"]["distances"] == 12345);
}

TEST_CASE("json report: a finding gives its places as numbers and its sentence beside them", "[report]") {
  const json finding = report(testing::sample_dry_fit())["findings"][0];
  CHECK(finding["id"] == "F1");
  CHECK(finding["kind"] == "interference");
  CHECK(finding["parts"] == json::parse(R"(["hook curl", "bracket arm"])"));
  CHECK(finding["moves"] == json::parse("[1]"));
  CHECK(finding["stations_m"] == json::parse("[[0.52, 0.6], [0.86, 1.46], [1.72, 2.32]]"));
  CHECK(finding["from"]["lean_deg"].get<double>() == Approx(27.7).margin(1e-9));  // degrees to radians and back
  CHECK(finding["to"]["folds_deg"] == json::parse("[0.0]"));
  CHECK(finding["depth_m"] == 0.009);
  CHECK(finding["text"] == "hook curl meets bracket arm at all 8 brackets while rolling, 9.0 mm deep");
  CHECK(finding["remedies"] == json::array());
}

TEST_CASE("json report: the kinds are margin, zone, undecided and build besides", "[report]") {
  const json j = report(testing::sample_dry_fit());
  CHECK(j["findings"][1]["kind"] == "margin");
  CHECK(j["findings"][2]["kind"] == "zone");
  CHECK(j["findings"][3]["kind"] == "undecided");
  CHECK(j["findings"][4]["kind"] == "build");
  CHECK(j["findings"][4]["parts"] == json::parse(R"(["tread"])"));
  CHECK(j["moves"][0]["kind"] == "stand");
  CHECK(j["moves"][6]["kind"] == "park");
}

TEST_CASE("json report: what is not finite is null", "[report]") {
  DryFit fit = testing::clear_dry_fit();
  fit.moves[0].closest = {};
  fit.moves[0].at_least = fit.moves[0].at_most = std::numeric_limits<double>::infinity();
  fit.work.seconds = std::numeric_limits<double>::quiet_NaN();
  const json j = report(fit);
  CHECK(j["moves"][0]["clearance_at_least_m"].is_null());
  CHECK(j["moves"][0]["closest"].is_null());
  CHECK(j["work"]["seconds"].is_null());
}

TEST_CASE("json report: the same dry fit gives the same bytes", "[report]") {
  const Model model = testing::dry_fit_model();
  const DryFit fit = testing::sample_dry_fit();
  CHECK(dry_fit_json(model, fit, DisplayUnits::imperial) == dry_fit_json(model, fit, DisplayUnits::imperial));
}

TEST_CASE("json report: a name that is no UTF-8 still gives valid JSON", "[report]") {
  Model model = testing::dry_fit_model();
  model.name = "loft \xff";
  CHECK_NOTHROW(json::parse(dry_fit_json(model, testing::sample_dry_fit(), DisplayUnits::metric)));
}

TEST_CASE("json errors: each has its place, key, problem and hint", "[report]") {
  const json j = json::parse(errors_json({{"a.yaml", 4, 14, "room.depth", "is \"deep\"", "write a length"}}));
  CHECK(j["schema"] == "stowpath.error/1");
  CHECK(j["errors"] == json::parse(R"([{"file": "a.yaml", "line": 4, "column": 14, "key": "room.depth",
                                        "problem": "is \"deep\"", "hint": "write a length"}])"));
}
