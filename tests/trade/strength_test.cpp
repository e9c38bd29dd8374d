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
  for (const Effort task : {Effort::pull_down, Effort::pull_across, Effort::crank}) {
    const auto weak = fitting_figures(task, Person::weak), strong = fitting_figures(task, Person::strong);
    REQUIRE_FALSE(weak.empty());
    REQUIRE_FALSE(strong.empty());
    CHECK(weak.back().force < strong.front().force);
  }
  CHECK(fitting_figures(Effort::pull_down, Person::weak).front().force == 107);
  CHECK(fitting_figures(Effort::pull_down, Person::strong).front().force == 200);
  CHECK(fitting_figures(Effort::crank, Person::weak).front().force == 22);
  CHECK(fitting_figures(Effort::crank, Person::strong).front().force == 133);
}

// S-HUM-horiz: "recommended upper limits, horizontal push/pull"; S-HUM-1472arm: seated, one arm.
TEST_CASE("strength: figures for another pull, or for people who sit, are left out by name", "[trade]") {
  const auto unfit = unfit_figures(Effort::pull_down);
  const auto why = [&](std::string_view id, double force) -> std::string_view {
    for (const UnfitFigure& u : unfit)
      if (u.figure.source.id == id && u.figure.force == force) return u.why;
    return "";
  };
  CHECK(why("S-HUM-horiz", 225) == "for a level pull");
  CHECK(why("S-HUM-60lb", 267) == "for a level pull");
  CHECK(why("S-HUM-1472arm", 116) == "not standing");
  CHECK(why("S-HUM-vert", 545).empty());
  CHECK(unfit_figures(Effort::crank).empty());
  for (const Effort task : {Effort::pull_down, Effort::pull_across, Effort::pull_up}) {
    std::size_t all = unfit_figures(task).size(), pulls = 0;
    for (const Person person : {Person::weak, Person::strong, Person::neither})
      all += fitting_figures(task, person).size();
    for (const StrengthFigure& figure : strength_figures())
      pulls += figure.effort == Effort::pull_down || figure.effort == Effort::pull_across ||
               figure.effort == Effort::pull_up;
    CHECK(all == pulls);  // none is dropped in silence
  }
}

TEST_CASE("strength: hands and lasting are kept as far as the page says them", "[trade]") {
  for (const StrengthFigure& figure : strength_figures()) {
    if (figure.source.id == "S-HUM-auto" && figure.force == 107) CHECK(figure.lasting == Lasting::sustained);
    if (figure.source.id == "S-HUM-15kg") CHECK(figure.hands == Hands::one);
    if (figure.source.id == "S-HUM-vert") CHECK(figure.lasting == Lasting::not_said);
  }
}

TEST_CASE("strength: what we suggest is called our judgement", "[trade]") {
  CHECK(kEasyPull == 107);
  CHECK(kHardPull == 225);
  CHECK(kPullSource.status == SourceStatus::judgement);
}
