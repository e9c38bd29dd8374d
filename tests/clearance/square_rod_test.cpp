#include <catch2/catch.hpp>
#include <cmath>

#include "tests/support/gallery.h"

using namespace stowpath;

// The curl's inner corner, 20 mm from the hook circle's centre under the pipe's, lies beside the arm's middle by
// 20 mm times the cosine of the angle where the curl ends; the arm's square top reaches 11 mm there.
TEST_CASE("square rod: a curl that comes under the saddle meets the corner of the arm that butts there",
          "[clearance]") {
  const std::string cured = testing::gallery_text("demo-cured");
  const std::string thick = testing::changed(cured, "arm: 12", "arm: 22");
  const DryFit fit = testing::dry_fit_of(testing::changed(thick, "rod: 12, inside: 24, shank: 150, wrap: 195",
                                                          "rod: 6, inside: 20, shank: 150, wrap: 212"));
  const Finding* meets = testing::find(fit, FindingKind::interference, "hook curl", "bracket arm");
  INFO(testing::told(fit));
  REQUIRE(meets != nullptr);
  const double end = 212.0 * 0.017453292519943295 + meets->worst.lean;
  CHECK(meets->clearance == Approx(0.020 * std::abs(std::cos(end)) - 0.011).margin(6e-5));  // the curl's cover
}
