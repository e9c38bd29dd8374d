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
TEST_CASE("loads: in the costume loft every piece whose resistance is known bears what it gets", "[loads]") {
  const std::string text = rig_text("costume-loft");
  const LoadsReport report = loads_of(changed(text, "  pulled by:", "  overload: 120 lbf\n  pulled by:"));
  CHECK(report.rail_problem.empty());
  CHECK(report.hardware.size() > 20);
  CHECK(all_bear(report));
  CHECK_FALSE(all_bear(loads_of(text)));
}

TEST_CASE("loads: a thinner pin or a heavier climber is told", "[loads]") {
  const std::string text = rig_text("costume-loft");
  CHECK_FALSE(all_bear(loads_of(changed(text, "pin: 3/4", "pin: 3/8"))));
  CHECK_FALSE(all_bear(loads_of(changed(text, "mass: 250 lb", "mass: 400 lb"))));
}
