#include "render/sheet/dry_fit_sheet.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "tests/support/lettering_check.h"
#include "tests/support/sample_dry_fit.h"

using namespace stowpath;
using stowpath::testing::check_lettering;
using stowpath::testing::has_text;

namespace {

DisplayList sheet(const DryFit& fit, DisplayUnits units) {
  const Scene scene = testing::dry_fit_scene();
  const Model model = testing::dry_fit_model();
  return make_dry_fit_sheet({scene, model, fit, units});
}

}  // namespace

TEST_CASE("sheet: no lettering lies on other lettering or outside the frame", "[sheet]") {
  for (const DisplayUnits units : {DisplayUnits::metric, DisplayUnits::imperial}) {
    check_lettering(sheet(testing::sample_dry_fit(), units));
    check_lettering(sheet(testing::clear_dry_fit(), units));
  }
}

TEST_CASE("sheet: a flood of findings is counted where it does not fit", "[sheet]") {
  DryFit fit = testing::sample_dry_fit();
  for (int i = 6; i < 60; ++i) {
    fit.findings.push_back(testing::hook_finding(i % 8 + 1, 8));
    fit.findings.back().id = "F" + std::to_string(i);
  }
  const DisplayList list = sheet(fit, DisplayUnits::metric);
  check_lettering(list);
  CHECK(has_text(list, "more: see the written report"));
  CHECK(has_text(list, "parked at lean 88.0°"));  // the moves keep their place
}

TEST_CASE("sheet: a long name is cut, not written over the frame", "[sheet]") {
  const Scene scene = testing::dry_fit_scene();
  Model model = testing::dry_fit_model();
  for (int i = 0; i < 20; ++i) model.name += " and the bench beside it";
  const DryFit fit = testing::sample_dry_fit();
  check_lettering(make_dry_fit_sheet({scene, model, fit, DisplayUnits::metric}));
}

TEST_CASE("sheet: a finding is told by number, cross and words, not by colour alone", "[sheet]") {
  const DisplayList list = sheet(testing::sample_dry_fit(), DisplayUnits::metric);
  CHECK(has_text(list, "INTERFERENCE"));
  CHECK(has_text(list, "F1"));
  CHECK(has_text(list, "hook curl meets bracket arm"));
  const auto strokes = std::count_if(list.items.begin(), list.items.end(), [](const Item& item) {
    const Path* path = std::get_if<Path>(&item);
    return path != nullptr && path->pen && path->pen->ink == Ink::red;
  });
  CHECK(strokes > 2 * 4 * 2);  // a cross for each of four findings in two views, besides hatching
}

TEST_CASE("sheet: a clear dry fit shows no finding", "[sheet]") {
  const DisplayList list = sheet(testing::clear_dry_fit(), DisplayUnits::metric);
  CHECK(has_text(list, "CLEAR"));
  CHECK_FALSE(has_text(list, "F1"));
}

TEST_CASE("sheet: layers pair, and their ids are given once", "[sheet]") {
  std::set<std::string> ids;
  int depth = 0;
  for (const Item& item : sheet(testing::sample_dry_fit(), DisplayUnits::metric).items) {
    const Group* group = std::get_if<Group>(&item);
    if (group == nullptr) continue;
    depth += group->opens ? 1 : -1;
    CHECK(depth >= 0);
    if (group->opens) CHECK(ids.insert(group->id).second);
  }
  CHECK(depth == 0);
}

TEST_CASE("sheet: feet and inches go on tabloid, millimetres on A3", "[sheet]") {
  const DisplayList inches = sheet(testing::clear_dry_fit(), DisplayUnits::imperial);
  const DisplayList metric = sheet(testing::clear_dry_fit(), DisplayUnits::metric);
  CHECK(inches.width == Approx(17 * 25.4));
  CHECK(metric.width == Approx(420.0));
  CHECK(has_text(metric, "2950"));
  CHECK(has_text(inches, "9'-8 1/8\""));
}
