#include <catch2/catch.hpp>

#include "tests/support/gallery.h"

using namespace stowpath;
using stowpath::testing::changed;
using stowpath::testing::dry_fit_of;
using stowpath::testing::find;
using stowpath::testing::told;

namespace {

const std::string kRoom = R"(stowpath: 1
units: mm
room: {length: 5000, depth: 3500, ceiling: 3000}
loft: {edge: 900, deck: 2200, thickness: 200, stations: [200, 4800]}
rail:
  pipe: NPS 1
  at: {out: 975, up: 2150}
  stations: [100, 4900]
  brackets: {first: 300, every: 800, projection: 75, drop: 55, arm: 12, saddle: [40, 2], plate: [60, 90, 6]}
stair:
  width: 560
  side rails: {lumber: 2x6, front face: 70}
  sections: [2400]
  above pivot: -75
  hooks: {stations: [-261, 261], rod: 12, inside: 24, shank: 150, wrap: 170}
  casters: {diameter: 75, width: 32, along: 2420, stations: [-310, 310]}
  extras: [{name: arm, section: 1, outline: EXTRA, stations: [-20, 20]}]
)";

std::string with_extra(const std::string& outline) { return changed(kRoom, "EXTRA", outline); }

}  // namespace

// The stair leans 30 degrees: 4 m across is 3.5 m out and 2 m up of the pivot, 4.5 m along is 2.2 m out and 3.9 m down.
TEST_CASE("shell: what lies wholly behind floor, walls or ceiling, however far, is found", "[clearance]") {
  struct Behind {
    const char *outline, *face;
  };
  for (const Behind& behind : {Behind{"[[0, 4500], [100, 4500], [100, 4600], [0, 4600]]", "front wall"},
                               Behind{"[[0, 4500], [100, 4500], [100, 4600], [0, 4600]]", "ceiling"},
                               Behind{"[[0, -4100], [100, -4100], [100, -4000], [0, -4000]]", "back wall"},
                               Behind{"[[4500, 0], [4600, 0], [4600, 100], [4500, 100]]", "floor"}}) {
    const DryFit fit = dry_fit_of(with_extra(behind.outline));
    INFO(behind.face << ": " << told(fit));
    CHECK(find(fit, FindingKind::interference, "arm", behind.face) != nullptr);
  }
}

TEST_CASE("shell: a stair 3 m wide does not fit between side walls 600 mm apart", "[clearance]") {
  std::string text = with_extra("[[100, 0], [110, 0], [110, 10], [100, 10]]");
  text = changed(text, "length: 5000", "length: 600");
  text = changed(text, "stations: [200, 4800]", "stations: [0, 600]");
  text = changed(text, "stations: [100, 4900]\n  brackets: {first: 300, every: 800",
                 "stations: [0, 600]\n  brackets: {at: [40, 560]");
  text = changed(text, "width: 560", "width: 3000");
  text = changed(text, "[-261, 261]", "[-150, 150]");
  text = changed(text, "[-310, 310]", "[-100, 100]");
  const DryFit fit = dry_fit_of(text);
  INFO(told(fit));
  CHECK(find(fit, FindingKind::interference, "side rail", "left wall") != nullptr);
  CHECK(find(fit, FindingKind::interference, "side rail", "right wall") != nullptr);
}
