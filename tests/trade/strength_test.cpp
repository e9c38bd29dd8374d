#include "sim/trade/strength.h"

#include <catch2/catch.hpp>
#include <algorithm>
#include <string>

using namespace stowpath;

namespace {
constexpr double kPoundForce = 4.4482216152605;

bool has_figure(const std::string& id, Effort effort, double force, SourceStatus status) {
  const auto figures = strength_figures();
  return std::any_of(figures.begin(), figures.end(), [&](const StrengthFigure& figure) {
    return figure.source.id == id && figure.effort == effort && figure.force == force && figure.source.status == status;
  });
}
}  // namespace

// Each as printed in newtons; sources in the rows.
TEST_CASE("strength: the published figures keep their source and status", "[trade][published]") {
  const SourceStatus verified = SourceStatus::verified, memory = SourceStatus::memory;
  for (const double force : {225.0, 110.0, 188.0, 130.0}) {
    CHECK(has_figure("S-HUM-horiz", Effort::pull_across, force, verified));  // Eastman Kodak 1986
  }
  CHECK(has_figure("S-HUM-auto", Effort::pull_down, 107, verified));
  CHECK(has_figure("S-HUM-auto", Effort::crank, 22, verified));
  CHECK(has_figure("S-HUM-crank30", Effort::crank, 133, verified));
  CHECK(has_figure("S-HUM-60lb", Effort::pull_across, 267, verified));
  CHECK(has_figure("S-HUM-15kg", Effort::pull_across, 147, verified));
  CHECK(has_figure("S-HUM-grip", Effort::grip, 200, verified));
  CHECK(has_figure("S-HUM-vert", Effort::pull_down, 545, memory));
  CHECK(has_figure("S-HUM-vert", Effort::pull_down, 200, memory));
  CHECK(has_figure("S-HUM-1472pp", Effort::pull_across, 490, memory));
  CHECK(has_figure("S-HUM-1472arm", Effort::pull_down, 116, memory));
}

// The same sources in pounds: 24 and 5 lb (ergoweb.com), 30 lb (fallsafety.com), 60 lb (US Army), 50 and 24 lbf
// (Kodak); they round to whole newtons, Kodak's within a pound.
TEST_CASE("strength: newtons and pounds of the same figure agree", "[trade][published]") {
  CHECK(24 * kPoundForce == Approx(107).margin(0.5));
  CHECK(5 * kPoundForce == Approx(22).margin(0.5));
  CHECK(30 * kPoundForce == Approx(133).margin(0.5));
  CHECK(60 * kPoundForce == Approx(267).margin(0.5));
  CHECK(50 * kPoundForce == Approx(225).margin(kPoundForce));
  CHECK(24 * kPoundForce == Approx(110).margin(kPoundForce));
}

TEST_CASE("strength: the weak's strongest figure is below the strong's weakest", "[trade]") {
  const auto weak = hand_pull_figures(Person::weak), strong = hand_pull_figures(Person::strong);
  REQUIRE_FALSE(weak.empty());
  REQUIRE_FALSE(strong.empty());
  CHECK(weak.back().force < strong.front().force);
  CHECK(weak.front().force == 107);
  CHECK(strong.front().force == 200);
  CHECK(crank_figures(Person::weak).front().force == 22);
  CHECK(crank_figures(Person::strong).front().force == 133);
}

TEST_CASE("strength: what we suggest is called our judgement", "[trade]") {
  CHECK(kEasyPull == 107);
  CHECK(kHardPull == 225);
  CHECK(kPullSource.status == SourceStatus::judgement);
}
