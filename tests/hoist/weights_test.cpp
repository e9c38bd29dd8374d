#include "sim/hoist/weights.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "tests/support/sample_scene.h"

using namespace stowpath;
using stowpath::testing::sample_scene;

namespace {

Weights weights_of(const Scene& scene) { return weigh(scene, build_model(scene)); }

double sum_of(const Weights& weights, int section) {
  double sum = 0.0;
  for (const BillRow& row : weights.rows) sum += row.section == section ? row.total : 0.0;
  return sum;
}

const BillRow& row_of(const Weights& weights, const std::string& what, int section) {
  const auto row = std::find_if(weights.rows.begin(), weights.rows.end(),
                                [&](const BillRow& r) { return r.what == what && r.section == section; });
  REQUIRE(row != weights.rows.end());
  return *row;
}

constexpr double kSummed = 1e-12;  // rounding of some twenty sums

}  // namespace

TEST_CASE("weights: the bill's rows add up to the sections, and those to the stair", "[hoist]") {
  Scene scene = sample_scene();
  for (const bool weighed : {false, true}) {
    if (weighed) scene.stair.weighed = {25.0, 11.0};
    const Weights weights = weights_of(scene);
    REQUIRE(weights.sections.size() == 2);
    CHECK(sum_of(weights, 0) == Approx(weights.sections[0].used.mass).epsilon(kSummed));
    CHECK(sum_of(weights, 1) == Approx(weights.sections[1].used.mass).epsilon(kSummed));
    CHECK(weights.stair == Approx(sum_of(weights, 0) + sum_of(weights, 1)).epsilon(kSummed));
    for (const BillRow& row : weights.rows) CHECK(row.total == Approx(row.count * row.each).epsilon(kSummed));
  }
}

TEST_CASE("weights: the rows count pieces as a builder would", "[hoist]") {
  const Weights weights = weights_of(sample_scene());
  CHECK(row_of(weights, "side rail", 0).count == 2);
  CHECK(row_of(weights, "hook", 0).count == 2);
  CHECK(row_of(weights, "caster", 1).count == 2);
  CHECK(row_of(weights, "caster", 1).each == Approx(0.4));
  CHECK(row_of(weights, "tread", 0).count > 3);
  CHECK(row_of(weights, "gate hinge", 0).total == Approx(0.6));
}

TEST_CASE("weights: each row says what it rests on", "[hoist]") {
  const Weights weights = weights_of(sample_scene());
  const BillRow &rail = row_of(weights, "side rail", 0), &hook = row_of(weights, "hook", 0);
  CHECK(rail.basis.rfind("SPF at ", 0) == 0);
  CHECK(rail.basis.find("12 % moisture") != std::string::npos);
  CHECK(rail.status == SourceStatus::derived);
  CHECK(hook.status == SourceStatus::memory);
  CHECK_FALSE(row_of(weights, "gate hinge", 0).status);
}

TEST_CASE("weights: what the scale says goes before what was computed, and the bill says so", "[hoist]") {
  Scene scene = sample_scene();
  const double computed = weights_of(scene).sections[0].used.mass;
  scene.stair.weighed = {30.0, std::nullopt};
  const Model model = build_model(scene);
  const Weights weights = weigh(scene, model);
  CHECK(model.masses[0].mass == Approx(30.0));
  CHECK(weights.sections[0].weighed);
  CHECK(weights.sections[0].computed == Approx(computed));
  CHECK_FALSE(weights.sections[1].weighed);
  CHECK(row_of(weights, "side rail", 0).basis.find("to make up the weighed 30.0 kg") != std::string::npos);
  CHECK(row_of(weights, "side rail", 1).basis.find("weighed") == std::string::npos);
}

TEST_CASE("weights: a spreader hangs on the line and is no part of the stair", "[hoist]") {
  Scene scene = sample_scene();
  const double stair = weights_of(scene).stair;
  scene.hoist->spreader = Spreader{0.52, 0.25, 1.2};
  const Weights weights = weights_of(scene);
  CHECK(weights.stair == Approx(stair));
  CHECK(weights.on_line == 1.2);
  CHECK(row_of(weights, "spreader", -1).total == 1.2);
}

// Closed form: a pin of twice the thickness weighs four times as much, steel at 7,850 kg/m3 (from memory).
TEST_CASE("weights: what is left out is computed, not guessed", "[hoist]") {
  Scene thick = sample_scene();
  thick.stair.locks[0].pin *= 2.0;
  const Model model = build_model(thick);
  double through = 0.0;
  for (const StairPart& part : model.stair)
    if (part.kind == PartKind::lock_pin && part.name == "lock pin") through += total_length(part.stations);
  REQUIRE(through > 0.0);
  const double pins = 7850.0 * 0.25 * 3.14159265358979 * 0.010 * 0.010 * through;
  const Weights before = weights_of(sample_scene()), after = weights_of(thick);
  CHECK(after.left_out - before.left_out == Approx(3.0 * pins).epsilon(0.02));  // outlines are drawn within 0.1 mm
  CHECK(before.left_out > pins);                                               // leaves and barrels too
  Scene screwed = sample_scene();
  screwed.stair.hooks.screws = Screws{3, 0.008, 0.050, true, ""};
  const double screws = 6 * 7850.0 * 0.25 * 3.14159265358979 * 0.008 * 0.008 * 0.050;
  CHECK(weights_of(screwed).left_out - before.left_out == Approx(screws));
}
