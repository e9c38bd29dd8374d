#include "render/paint/svg.h"

#include <catch2/catch.hpp>
#include <clocale>
#include <limits>

#include "render/paint/number.h"
#include "render/sheet/dry_fit_sheet.h"
#include "tests/support/sample_dry_fit.h"
#include "tests/support/xml_check.h"

using namespace stowpath;
using Catch::Contains;

namespace {

std::string sample_svg(const std::string& name, DisplayUnits units) {
  const Scene scene = testing::dry_fit_scene();
  Model model = testing::dry_fit_model();
  model.name = name;
  const DryFit fit = testing::sample_dry_fit();
  return paint_svg(make_dry_fit_sheet({scene, model, fit, units}));
}

}  // namespace

TEST_CASE("xml check: it sees what is broken", "[support]") {
  CHECK(testing::xml_fault("<a b=\"c\"><d/>text &amp; more</a>").empty());
  for (const char* broken :
       {"<a>", "<a></b>", "<a>&</a>", "<a b=c/>", "<a b=\"1\" b=\"2\"/>", "<a id=\"x\"><b id=\"x\"/></a>"})
    CHECK_FALSE(testing::xml_fault(broken).empty());
}

TEST_CASE("svg: the sheet is well-formed, at its true size", "[paint]") {
  const std::string svg = sample_svg("Wheel loft", DisplayUnits::metric);
  CHECK(testing::xml_fault(svg) == "");
  CHECK_THAT(svg, Contains("width=\"420mm\" height=\"297mm\" viewBox=\"0 0 420 297\""));
  CHECK_THAT(svg, Contains("<title>Dry fit: Wheel loft</title>"));
}

TEST_CASE("svg: what the user writes cannot break out of the text", "[paint]") {
  const std::string svg = sample_svg("a<b>&\"c\" \x01</svg><script>", DisplayUnits::imperial);
  CHECK(testing::xml_fault(svg) == "");
  CHECK_THAT(svg, !Contains("<script>"));
}

TEST_CASE("svg: the same sheet gives the same bytes", "[paint]") {
  CHECK(sample_svg("Wheel loft", DisplayUnits::imperial) == sample_svg("Wheel loft", DisplayUnits::imperial));
}

TEST_CASE("svg: a fraction carries its plain words for who cannot see it", "[paint]") {
  CHECK_THAT(sample_svg("Wheel loft", DisplayUnits::imperial), Contains("aria-label=\"9'-8 1/8&quot;\""));
}

TEST_CASE("svg: an arc bends as it is told", "[paint]") {
  DisplayList list;
  list.width = list.height = 10.0;
  list.arc({5, 5}, 2.0, 0.0, 0.5 * std::numbers::pi, {});
  CHECK_THAT(paint_svg(list), Contains("d=\"M7 5A2 2 0 0 0 5 3\""));
}

TEST_CASE("svg: numbers have two decimals, a point, and no surprises", "[paint]") {
  CHECK(drawing_number(1.0) == "1");
  CHECK(drawing_number(-0.001) == "0");
  CHECK(drawing_number(12.345678) == "12.35");
  CHECK(drawing_number(1e8) == "100000000");
  CHECK(drawing_number(std::numeric_limits<double>::quiet_NaN()) == "0");
  const std::string before = std::setlocale(LC_NUMERIC, nullptr);
  if (std::setlocale(LC_NUMERIC, "de_DE.UTF-8") != nullptr) CHECK(drawing_number(0.5) == "0.5");
  std::setlocale(LC_NUMERIC, before.c_str());
}

TEST_CASE("svg: a sheet laid on another is a drawing of its own within it", "[paint]") {
  DisplayList inner, sheet;
  inner.width = 8.0;
  inner.height = 4.0;
  inner.title = "Inner <one>";
  inner.line({0.0, 0.0}, {50.0, 50.0}, {});
  sheet.lay(inner, {5.0, 3.0});
  const std::string svg = paint_svg(sheet);
  CHECK_THAT(svg, Contains("<svg overflow=\"hidden\" x=\"5\" y=\"3\" width=\"8\" height=\"4\">"));
  CHECK_THAT(svg, Contains("<title>Inner &lt;one&gt;</title>"));
  CHECK_THAT(svg, Contains("width=\"13mm\" height=\"7mm\""));
  CHECK(testing::xml_fault(svg) == "");
}
