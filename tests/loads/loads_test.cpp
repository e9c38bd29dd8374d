#include "sim/loads/loads.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "sim/hoist/pull.h"
#include "sim/loads/hoist_loads.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

LoadsReport loads_of(const std::string& text) {
  const Scene scene = parse_scene(text, "test.yaml");
  const Model model = build_model(scene);
  return look_at_loads(scene, model, hoist_loads(scene, model, pull_through(scene, model, {})));
}

bool all_bear(const LoadsReport& report) {
  return std::all_of(report.hardware.begin(), report.hardware.end(),
                     [](const HardwareItem& item) { return item.ratio().value_or(1.0) >= 1.0; });
}

}  // namespace

// With a clutch in the line; the crank alone pulls 996 lb when the stair catches.
TEST_CASE("loads: in the costume loft all is known and every piece bears what it gets", "[loads]") {
  const std::string text = gallery_text("costume-loft");
  const LoadsReport report = loads_of(text);
  CHECK(report.rail_problem.empty());
  CHECK(report.hardware.size() > 40);
  for (const HardwareItem& item : report.hardware) {
    INFO(item.name);
    if (item.judged) CHECK((item.ratio() && *item.ratio() >= 1.0));
  }
}

TEST_CASE("loads: no clutch, a tight pin, a thinner rod or a heavier climber is told", "[loads]") {
  const std::string text = gallery_text("costume-loft");
  REQUIRE(all_bear(loads_of(text)));
  for (const auto& [from, to] :
       {std::pair{"  overload: 150 lbf", "  overload: 2000 lbf"}, std::pair{"hole: slotted", "hole: tight"},
        std::pair{"rod: 13/16", "rod: 9/16"}, std::pair{"mass: 250 lb", "mass: 400 lb"}})
    CHECK_FALSE(all_bear(loads_of(changed(text, from, to))));
}
