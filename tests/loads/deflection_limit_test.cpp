#include "sim/loads/deflection_limit.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/support/sample_scene.h"

using namespace stowpath;

TEST_CASE("deflection: every part has its limit, and the lesser one counts", "[loads]") {
  CHECK(deflection_limits().size() == 3);
  for (const BendingPart part : {BendingPart::stair, BendingPart::tread, BendingPart::pipe})
    CHECK(deflection_limit(part).part == part);
  const DeflectionLimit& tread = deflection_limit(BendingPart::tread);
  CHECK(allowed_deflection(tread, 0.6) == Approx(0.002));
  CHECK(allowed_deflection(tread, 3.0) == Approx(0.006));
  CHECK(tread.source.status == SourceStatus::verified);
  CHECK(allowed_deflection(deflection_limit(BendingPart::stair), 9.0) == Approx(0.015));
  CHECK(deflection_limit(BendingPart::pipe).source.status == SourceStatus::judgement);
}

// Closed form of a load W spread over c in the middle of a span: W (8 L^3 - 4 L c^2 + c^3) / 384 E I, from memory; with
// c = 0 it is W L^3 / 48 E I, with c = L it is 5 W L^3 / 384 E I.
TEST_CASE("deflection: a load on a patch is the closed form's", "[loads]") {
  const double span = 0.6, stiffness = 900.0, load = 1500.0;
  for (const double patch : {0.0, 0.1, 0.3, 0.6}) {
    const double c = patch, L = span;
    const double wanted = load * (8 * L * L * L - 4 * L * c * c + c * c * c) / (384 * stiffness);
    CHECK(patch_deflection(span, stiffness, load, patch) == Approx(wanted).epsilon(1e-12));
  }
  CHECK(patch_deflection(span, stiffness, load, 5.0) == patch_deflection(span, stiffness, load, span));
}

TEST_CASE("deflection: the pipe's worst is where it sags most for its span", "[loads]") {
  Scene scene = testing::sample_scene();
  scene.rail.brackets.stations = {0.3, 1.4, 2.5, 3.5, 5.5, 6.4, 7.2};
  const RailCase rail = rail_under(scene, {"a test", {0.0, -1500.0}, {0.5, 0.5}, {0.55, 6.9}});
  const DeflectionCheck worst = pipe_deflection(scene, rail);
  CHECK(worst.span == Approx(2.0));
  CHECK(worst.allowed == Approx(2.0 / 300));
  CHECK(worst.deflection == Approx(rail.peaks.down.value).epsilon(1e-9));
  CHECK((worst.at > 3.5 && worst.at < 5.5));
  const RailCase heavier = rail_under(scene, {"a test", {0.0, -1800.0}, {0.5, 0.5}, {0.55, 6.9}});
  CHECK(pipe_deflection(scene, heavier).deflection > worst.deflection);
}

TEST_CASE("deflection: an overhang counts as a span of twice its length", "[loads]") {
  Scene scene = testing::sample_scene();
  scene.rail.brackets.stations = {0.2, 0.6, 1.0, 1.4};
  scene.rail.stations = {0.2, 2.4};
  scene.stair.hooks.stations = {0.0};
  const RailCase rail = rail_under(scene, {"a test", {0.0, -500.0}, {1.0}, {0.3, 2.3}});
  const DeflectionCheck worst = pipe_deflection(scene, rail);
  CHECK(worst.span == Approx(2.0));
  CHECK(worst.at == Approx(2.4));  // the end bends down most of all
}
