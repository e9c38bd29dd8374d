#include "render/sheet/plot.h"

#include <catch2/catch.hpp>

#include "render/paint/svg.h"
#include "render/sheet/hoist_sheet.h"
#include "render/sheet/loads_sheet.h"
#include "tests/support/hoist_report_parts.h"
#include "tests/support/sample_scene.h"
#include "tests/support/xml_check.h"

using namespace stowpath;
using Catch::Contains;
using stowpath::testing::HoistParts;
using stowpath::testing::sample_scene;

namespace {

constexpr double kDrawn = 1e-9;  // rounding of a few operations on millimetres of paper

Plot square() {
  Plot plot;
  plot.box = {{10.0, 10.0}, {110.0, 110.0}};
  plot.x = round_axis(0.0, 10.0, 10, "x");
  plot.y = round_axis(0.0, 10.0, 10, "y");
  return plot;
}

std::vector<Path> curve(const std::vector<Vec2>& values) {
  DisplayList list;
  draw_curve(list, square(), values, Pen{});
  std::vector<Path> paths;
  for (const Item& item : list.items) paths.push_back(std::get<Path>(item));
  return paths;
}

}  // namespace

TEST_CASE("plot: an axis takes round steps and holds its stretch", "[sheet]") {
  const PlotAxis axis = round_axis(29.7, 88.0, 10, "lean");
  CHECK(axis.step == Approx(10.0));
  CHECK(axis.lo == Approx(20.0));
  CHECK(axis.hi == Approx(90.0));
  CHECK(axis.decimals == 0);
  CHECK(round_axis(0.0, 0.37, 10, "").decimals == 2);
  CHECK_THROWS_AS(round_axis(1.0, 1.0, 10, ""), std::invalid_argument);
}

TEST_CASE("plot: values lie where the axes put them, y upward", "[sheet]") {
  const Vec2 at = square()(2.0, 1.0);
  CHECK(at.x == Approx(30.0).margin(kDrawn));
  CHECK(at.y == Approx(100.0).margin(kDrawn));
}

TEST_CASE("plot: a curve is cut at the frame, and goes on where it comes back", "[sheet]") {
  const auto paths = curve({{0.0, 5.0}, {2.0, 15.0}, {4.0, 5.0}});
  REQUIRE(paths.size() == 2);
  CHECK(paths[0].points.back().y == Approx(10.0).margin(kDrawn));
  CHECK(paths[0].points.back().x == Approx(20.0).margin(kDrawn));
  CHECK(paths[1].points.front().x == Approx(40.0).margin(kDrawn));
}

TEST_CASE("plot: a curve that lies outside is not drawn", "[sheet]") {
  CHECK(curve({{0.0, 11.0}, {10.0, 12.0}}).empty());
}

TEST_CASE("plot: the sheets of hoist and loads are whole, in both kinds of units", "[sheet]") {
  const HoistParts parts(sample_scene());
  for (const DisplayUnits units : {DisplayUnits::metric, DisplayUnits::imperial}) {
    const std::string hoist = paint_svg(make_hoist_sheet(parts.hoist(units)));
    CHECK(testing::xml_fault(hoist) == "");
    CHECK_THAT(hoist, Contains("lean of the upper section") && Contains("nobody belongs under"));
    const std::string loads = paint_svg(make_loads_sheet(parts.loaded(units)));
    CHECK(testing::xml_fault(loads) == "");
    CHECK_THAT(loads, Contains("greatest bending stress in the pipe") && Contains("greatest deflection of the pipe"));
  }
}
